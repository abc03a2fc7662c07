/**
 * Markup as text, for what stands on a page hundreds of times: as one text each it costs the server a fraction of what
 * it costs as elements. Every word in it is escaped; attributes stand in single quotes, which need no marks of their own
 * where the page carries the text a second time for the browser.
 */
export type Attributes = Readonly<Record<string, string | number>>;

/**
 * An element.
 * @param inner  markup: words in it are `escaped` already
 * @throws for an attribute that the content policy would drop
 */
export const element = (name: string, attributes: Attributes, inner = ""): string =>
  `<${name}${Object.entries(attributes)
    .map(([key, value]) => ` ${allowed(key)}='${escaped(String(value))}'`)
    .join("")}${inner === "" && EMPTY.has(name) ? "/>" : `>${inner}</${name}>`}`;

function allowed(key: string): string {
  if (/^(style|on\w+)$/i.test(key)) throw new Error(`the content policy drops ${key}`);
  return key;
}

/** Shapes, which end in themselves: nothing stands in them. */
const EMPTY: ReadonlySet<string> = new Set(["path", "rect", "line", "circle", "use"]);

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Words as markup. */
export const escaped = (text: string): string =>
  /[&<>"']/.test(text) ? text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? "") : text;

/** Words for those who hear the page. */
export const unseen = (words: string): string => element("span", { class: "unseen" }, escaped(words));
