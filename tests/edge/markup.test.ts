import { expect, test } from "vitest";
import { element, escaped, unseen } from "@/lib/edge/markup";
import { signMarkup } from "@/lib/edge/sign-markup";

test("words and attributes are escaped, so that nothing typed becomes markup", () => {
  const typed = `<script>alert("x")</script> & 'more'`;
  const safe = "&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;more&#39;";
  expect(escaped(typed)).toBe(safe);
  expect(element("a", { href: typed }, escaped(typed))).toBe(`<a href='${safe}'>${safe}</a>`);
  expect(unseen(typed)).toBe(`<span class='unseen'>${safe}</span>`);
});

test("a shape ends in itself; what the content policy would drop is refused", () => {
  expect(element("rect", { x: 1 })).toBe("<rect x='1'/>");
  expect(element("span", {})).toBe("<span></span>");
  for (const key of ["style", "onclick", "onLoad"]) expect(() => element("b", { [key]: "x" })).toThrow("drops");
});

test("a sign is its shape and its word", () => {
  expect(signMarkup("dash", "still", escaped("nothing to buy"))).toBe(
    "<span class='sign still'><svg viewBox='0 0 15 15' aria-hidden='true'><path d='M2 7.5h11'/></svg><span>nothing to buy</span></span>",
  );
});
