/**
 * The order of ids: by Unicode code point, in every list and for every tie. @rule LOT-2
 *
 * A JavaScript string compares by UTF-16 unit, which puts characters beyond U+FFFF (written as two units from
 * D800 to DFFF) before those from U+E000 to U+FFFF. Moving the surrogates behind those units mends that.
 */
const rank = (unit: number): number => (unit < 0xd800 ? unit : unit < 0xe000 ? unit + 0x2000 : unit - 0x800);

/** Below zero when `a` comes before `b`, zero when they are equal, above zero when it comes after. */
export function byCodePoint(a: string, b: string): number {
  const length = Math.min(a.length, b.length);
  for (let at = 0; at < length; at += 1) {
    const [x, y] = [a.charCodeAt(at), b.charCodeAt(at)];
    if (x !== y) return rank(x) - rank(y);
  }
  return a.length - b.length;
}
