/**
 * What a ribbon draws without words, as markup. A long shelf has hundreds of ribbons of some twenty shapes each; as
 * one text they cost the server a fraction of what as many elements do. It is made of numbers and of our own names
 * alone, so there is nothing in it to escape.
 */
import type { Ribbon, Step } from "@/lib/edge/ribbon";
import { percentAcross } from "@/lib/edge/ribbon-time";

/** What is stretched (body, weeks) stands in an inner drawing whose units are ticks; the rest stands at a percentage. */
export function ribbonDrawing(ribbon: Ribbon, weeks: readonly number[]): string {
  const { span, height, waterline, lack, waste, losses, arrivals, order } = ribbon;
  const across = (ticks: number): string => percentAcross(ticks, span);
  const block = ({ from, width }: Step, top: number, tall: number, look: string): string =>
    `<rect x="${across(from)}" width="${across(width)}" y="${String(top)}" height="${String(tall)}" ${look}/>`;
  return [
    `<svg viewBox="0 0 ${String(span)} ${String(height)}" width="100%" height="${String(height)}" preserveAspectRatio="none">`,
    ...stretched(ribbon, weeks),
    "</svg>",
    ...lack.map((step) => block(step, waterline, step.reach, 'fill="url(#ribbon-lack-ink)"')),
    ...waste.map((step) => block(step, waterline - step.reach, step.reach, 'fill="url(#ribbon-waste-ink)"')),
    ...losses.map(
      (tick) =>
        `<line class="ribbon-loss" x1="${across(tick)}" x2="${across(tick)}" y1="10" y2="${String(waterline)}"/>`,
    ),
    `<rect class="ribbon-water" width="100%" y="${String(waterline)}" height="1"/>`,
    ...runsOn(lack).map((step) => block(step, waterline, 2, 'class="ribbon-lack-top"')),
    `<rect class="ribbon-today" x="-1" y="2" width="2" height="${String(height - 2)}"/>`,
    ...losses.map((tick) => `<use href="#ribbon-hourglass" x="${across(tick)}"/>`),
    ...arrivals.map((tick) => `<use href="#ribbon-ring" x="${across(tick)}" y="${String(waterline)}"/>`),
    order ? `<use href="#ribbon-${order.kind}" x="${across(order.at)}"/>` : "",
  ].join("");
}

const stretched = ({ span, height, body, edge, safety }: Ribbon, weeks: readonly number[]): readonly string[] => [
  body && `<path class="ribbon-body" d="${body}"/>`,
  weeks.length > 0
    ? `<path class="ribbon-weeks" d="${weeks.map((tick) => `M${String(tick)} 0V${String(height)}`).join("")}"/>`
    : "",
  safety === null ? "" : `<path class="ribbon-safety" d="M0 ${String(safety)}H${String(span)}"/>`,
  edge && `<path class="ribbon-edge" d="${edge}"/>`,
];

/** Steps that follow on one another, as one. */
const runsOn = (steps: readonly Step[]): readonly Step[] =>
  steps.reduce<readonly Step[]>((runs, step) => {
    const last = runs.at(-1);
    return last && last.from + last.width === step.from
      ? [...runs.slice(0, -1), { ...last, width: last.width + step.width }]
      : [...runs, step];
  }, []);
