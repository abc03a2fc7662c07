import { expect, test } from "vitest";
import type { Ribbon } from "@/lib/edge/ribbon";
import { ribbonMarkup } from "@/lib/edge/ribbon-markup";

const bare: Ribbon = {
  of: "M",
  size: "row",
  span: 100,
  height: 48,
  waterline: 35,
  body: "",
  edge: "",
  safety: null,
  lack: [],
  waste: [],
  losses: [],
  arrivals: [],
  order: null,
  captions: [],
  sentence: "",
};

/** The shapes in their order, each by its name. */
const shapes = (ribbon: Partial<Ribbon>, weeks: readonly number[] = []): string =>
  [...ribbonMarkup({ ...bare, ...ribbon }, weeks).matchAll(/<(\w+)/g)].map(([, name]) => name).join(" ");

test("an empty ribbon is its waterline and today", () => {
  expect(shapes({})).toBe("svg rect rect");
});

test("each part has its shape, and steps of a lack that follow on one another share one line", () => {
  const lack = [
    { from: 10, width: 5, reach: 6 },
    { from: 15, width: 5, reach: 9 },
  ];
  expect(shapes({ body: "M0 0", edge: "M0 0", safety: 9 }, [7, 14])).toBe("svg path path path path rect rect");
  expect(shapes({ lack })).toBe("svg rect rect rect rect rect");
  expect(ribbonMarkup({ ...bare, lack }, [])).toContain("class='ribbon-lack-top' x='10%' width='10%'");
  expect(shapes({ losses: [3], arrivals: [4], order: { kind: "notch", at: 5 } })).toBe(
    "svg rect rect line use use use",
  );
});

test("the words of a caption are words", () => {
  const text = `short 8 g of <script>alert("x")</script> & 'more'`;
  const drawn = ribbonMarkup(
    { ...bare, captions: [{ row: "rail", ink: "madder", text, at: 1, anchor: "start", off: 4 }] },
    [],
  );
  expect(drawn).toContain("&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;more&#39;</text>");
  expect(drawn).not.toContain("<script");
  expect(drawn).not.toMatch(/\s(style|on\w+)=/);
});
