/** Bytes as text: UTF-8 (RFC 3629), strictly, with one leading byte order mark ignored. @rule FILE-1 */

const LARGEST_FILE_MIB = 64;
/** Larger files are refused by their size. */
export const LARGEST_FILE_BYTES = LARGEST_FILE_MIB * 2 ** 20;

export type Utf8Reading =
  { readonly kind: "text"; readonly text: string } | { readonly kind: "refused"; readonly fault: string };

/** The text of the bytes, or a sentence that says why they are none that could be JSON. */
export function utf8Text(bytes: Uint8Array): Utf8Reading {
  const refused = (fault: string): Utf8Reading => ({ kind: "refused", fault });
  if (bytes.length > LARGEST_FILE_BYTES) {
    return refused(`is larger than ${String(LARGEST_FILE_MIB)} MiB, the most that is read`);
  }
  if (looksLikeUtf16(bytes)) return refused("not JSON in UTF-8: it looks like UTF-16; save it as UTF-8");
  const nul = bytes.indexOf(0);
  if (nul >= 0) return refused(`not JSON: a NUL byte on line ${String(lineOf(bytes, nul))}; JSON text never holds one`);
  const text = decoded(bytes);
  if (text !== undefined) return { kind: "text", text };
  return refused(
    `not JSON in UTF-8: bytes on line ${String(firstBadLine(bytes))} that are no character; save it as UTF-8`,
  );
}

const looksLikeUtf16 = ([first, second]: Uint8Array): boolean =>
  (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);

function decoded(bytes: Uint8Array, strict = new TextDecoder("utf-8", { fatal: true })): string | undefined {
  try {
    return strict.decode(bytes);
  } catch {
    return undefined;
  }
}

const LINE_FEED = 0x0a;

function lineOf(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let at = bytes.indexOf(LINE_FEED); at >= 0 && at < offset; at = bytes.indexOf(LINE_FEED, at + 1)) line += 1;
  return line;
}

/** A line feed is never part of a longer character, so each line can be tried by itself. */
function firstBadLine(bytes: Uint8Array): number {
  const strict = new TextDecoder("utf-8", { fatal: true });
  for (let [line, start] = [1, 0]; ; line += 1) {
    const end = bytes.indexOf(LINE_FEED, start);
    if (end < 0 || decoded(bytes.subarray(start, end), strict) === undefined) return line;
    start = end + 1;
  }
}
