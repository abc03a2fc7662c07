/** The batch code as a drawing: a QR code or Code 128, by bwip-js, as the path of an SVG in modules. @rule LABEL-7 */
import bwip from "bwip-js/node";
import type { CodeContent } from "@/lib/domain/label/gs1";
import type { CodeKind } from "@/lib/domain/label/label";

export interface CodeDrawing {
  /** In modules, the quiet zone on every side that asks for one included. */
  readonly width: number;
  readonly height: number;
  readonly path: string;
  /** The least width of a module, mm. */
  readonly module: number;
}

/** ISO/IEC 18004 asks for four modules around a QR code, ISO/IEC 15417 for ten on either side of Code 128 (from memory). */
const QUIET = { QR: 4, "Code 128": 10 } as const;
/** Common practice: what a telephone reads from a desktop printer. */
const MODULE = { QR: 0.35, "Code 128": 0.25 } as const;
/** Code 128 as high as a quarter of an inch, in its modules. */
const BAR_HEIGHT = 26;

/** @returns null where the code cannot carry the text */
export function codeDrawing(kind: CodeKind, { text, isGs1 }: CodeContent): CodeDrawing | null {
  // A bar code of letters beyond ASCII is read as other ones.
  if (kind === "Code 128" && !/^[\x20-\x7e]+$/.test(text)) return null;
  const symbology = kind === "QR" ? (isGs1 ? "gs1qrcode" : "qrcode") : isGs1 ? "gs1-128" : "code128";
  const raw = rawOf(symbology, text);
  if (raw === null) return null;
  if ("pixs" in raw) return matrix(raw.pixs, raw.pixx);
  return "sbs" in raw ? bars(raw.sbs) : null;
}

function rawOf(bcid: string, text: string) {
  try {
    return bwip.raw({ bcid, text })[0] ?? null;
  } catch {
    // The library throws where a text has a letter that the code has no sign for, or is too long for it.
    return null;
  }
}

function matrix(pixels: readonly number[], across: number): CodeDrawing {
  const quiet = QUIET.QR;
  const down = pixels.length / across;
  const path = pixels.map((isDark, at) =>
    isDark === 0 ? "" : `M${String((at % across) + quiet)} ${String(Math.floor(at / across) + quiet)}h1v1h-1z`,
  );
  return { width: across + 2 * quiet, height: down + 2 * quiet, path: path.join(""), module: MODULE.QR };
}

/** Widths of a bar and a space in turn. */
function bars(widths: readonly number[]): CodeDrawing {
  const quiet = QUIET["Code 128"];
  let from: number = quiet;
  const path = widths.map((width, at) => {
    const bar = at % 2 === 0 ? `M${String(from)} 0h${String(width)}v${String(BAR_HEIGHT)}h-${String(width)}z` : "";
    from += width;
    return bar;
  });
  return { width: from + quiet, height: BAR_HEIGHT, path: path.join(""), module: MODULE["Code 128"] };
}
