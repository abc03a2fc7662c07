/** A ribbon as SVG markup: a shelf of four hundred materials has ten thousand shapes in its ribbons. */
import { type Attributes, element as shape, escaped } from "./markup";
import type { Ribbon, Step } from "./ribbon";
import { percentAcross } from "./ribbon-time";

/** The ribbon whole, as wide as its column. */
export const ribbonDrawing = (ribbon: Ribbon, weeks: readonly number[]): string =>
  shape(
    "svg",
    {
      class: "ribbon",
      role: "img",
      "aria-label": ribbon.sentence,
      "data-of": ribbon.of,
      width: "100%",
      height: ribbon.height,
    },
    ribbonMarkup(ribbon, weeks),
  );

/**
 * The markup within the ribbon's `svg`.
 * @param weeks  where the hairlines of the weeks stand, in ticks
 */
export function ribbonMarkup(ribbon: Ribbon, weeks: readonly number[]): string {
  const { span, height, waterline, lack, waste, losses, arrivals, order, captions } = ribbon;
  const across = (ticks: number): string => percentAcross(ticks, span);
  const place = ({ from, width }: Step): Attributes => ({ x: across(from), width: across(width) });
  return [
    stretched(ribbon, weeks),
    ...lack.map((step) => shape("rect", { ...place(step), y: waterline, height: step.reach, fill: LACK_INK })),
    ...waste.map((step) =>
      shape("rect", { ...place(step), y: hundredths(waterline - step.reach), height: step.reach, fill: WASTE_INK }),
    ),
    shape("rect", { class: "ribbon-water", width: "100%", y: waterline, height: 1 }),
    ...runsOn(lack).map((step) => shape("rect", { class: "ribbon-lack-top", ...place(step), y: waterline, height: 2 })),
    shape("rect", { class: "ribbon-today", x: -1, y: 2, width: 2, height: height - 2 }),
    ...losses.flatMap((tick) => [
      shape("line", { class: "ribbon-loss", x1: across(tick), x2: across(tick), y1: 10, y2: waterline }),
      shape("use", { href: "#ribbon-hourglass", x: across(tick) }),
    ]),
    ...arrivals.map((tick) => shape("use", { href: "#ribbon-ring", x: across(tick), y: waterline })),
    ...(order ? [shape("use", { href: `#ribbon-${order.kind}`, x: across(order.at) })] : []),
    ...captions.map(({ row, ink, text, at, anchor, off, lift = 0 }) =>
      shape(
        "text",
        {
          class: `ribbon-caption ink-${ink}`,
          x: across(at),
          dx: off,
          y: (row === "rail" ? 11 : waterline - 7) - lift,
          "text-anchor": anchor,
        },
        escaped(text),
      ),
    ),
  ].join("");
}

/** Without the dust of a binary fraction. */
const hundredths = (pixels: number): number => Math.round(pixels * 100) / 100;

const LACK_INK = "url(#ribbon-lack-ink)";
const WASTE_INK = "url(#ribbon-waste-ink)";

/** What is as wide as the column: an inner drawing whose units are ticks. */
function stretched({ span, height, body, edge, safety }: Ribbon, weeks: readonly number[]): string {
  const uprights = weeks.map((tick) => `M${String(tick)} 0V${String(height)}`).join("");
  const paths = [
    { class: "ribbon-body", d: body },
    { class: "ribbon-weeks", d: uprights },
    { class: "ribbon-safety", d: safety === null ? "" : `M0 ${String(safety)}H${String(span)}` },
    { class: "ribbon-edge", d: edge },
  ];
  return shape(
    "svg",
    { viewBox: `0 0 ${String(span)} ${String(height)}`, width: "100%", height, preserveAspectRatio: "none" },
    paths
      .filter(({ d }) => d !== "")
      .map((path) => shape("path", path))
      .join(""),
  );
}

/** Steps that follow on one another, as one. */
const runsOn = (steps: readonly Step[]): readonly Step[] =>
  steps.reduce<readonly Step[]>((runs, step) => {
    const last = runs.at(-1);
    return last && last.from + last.width === step.from
      ? [...runs.slice(0, -1), { ...last, width: last.width + step.width }]
      : [...runs, step];
  }, []);
