/**
 * Who may ask, and what every answer says of itself. The app serves one maker at this computer: a page of another
 * host must neither read it through a name of its own (Host) nor write to it through the maker's browser (Origin).
 */

/** The largest workshop file that is taken. */
export const UPLOAD_LIMIT_BYTES = 64 * 1024 * 1024;
/** What a form adds round the file that it sends. */
const FORM_OVERHEAD_BYTES = 64 * 1024;

export const NO_FILE = "No file is chosen yet.";
export const FILE_IS_EMPTY = "The file is empty: there is no workshop in it.";
export const TOO_LARGE =
  "The file is larger than 64 MiB. A workshop file of that size is not taken; nothing has changed.";

/** What is wrong with the file that was chosen, before anything is read of it: that stands at its field. */
const AT_THE_FIELD: ReadonlySet<string> = new Set([NO_FILE, FILE_IS_EMPTY]);
export const isAtTheField = (fault: string): boolean => AT_THE_FIELD.has(fault);

/** Why a chosen file need not be sent; null where it may be. Where none is chosen a browser sends one without a name. */
export function faultBeforeSending({ name, size }: Pick<File, "name" | "size">): string | null {
  if (size > UPLOAD_LIMIT_BYTES) return TOO_LARGE;
  if (size > 0) return null;
  return name === "" ? NO_FILE : FILE_IS_EMPTY;
}

/** What a request says of itself, as far as it decides whether it is answered. */
export interface Request {
  readonly method: string;
  readonly host: string | null;
  readonly origin: string | null;
  /** What the browser says of the page that asks; null from one that does not say it. */
  readonly site: string | null;
  readonly contentLength: string | null;
}

export type Admission =
  { readonly kind: "admitted" } | { readonly kind: "refused"; readonly status: number; readonly sentence: string };

const OWN_HOST = /^(?:127\.0\.0\.1|localhost|\[::1\])(?::(\d{1,5}))?$/i;
const READING = new Set(["GET", "HEAD", "OPTIONS"]);

const refused = (status: number, sentence: string): Admission => ({ kind: "refused", status, sentence });

/**
 * Whether a request is answered.
 * @param port  that the app listens on; null where it is not known
 */
export function admission(request: Request, port: string | null): Admission {
  const host = OWN_HOST.exec(request.host ?? "");
  if (!host || (port !== null && (host[1] ?? "80") !== port))
    return refused(421, "Stillroom answers only at this computer's own address, such as http://127.0.0.1:3000.");
  if (READING.has(request.method)) return { kind: "admitted" };
  if (!comesFromItself(request))
    return refused(403, "Stillroom takes changes only from its own pages. Open the page here and try again.");
  if (request.contentLength === null || !/^\d{1,15}$/.test(request.contentLength))
    return refused(411, "The request does not say how long it is. Send it from the page in a browser.");
  if (Number(request.contentLength) > UPLOAD_LIMIT_BYTES + FORM_OVERHEAD_BYTES) return refused(413, TOO_LARGE);
  return { kind: "admitted" };
}

/** A browser names the page that sends a form; a program that is no browser may leave it out. */
function comesFromItself({ host, origin, site }: Request): boolean {
  if (site !== null && site !== "same-origin" && site !== "none") return false;
  return origin === null || (host !== null && origin.toLowerCase() === `http://${host.toLowerCase()}`);
}

/**
 * The content policy of one answer: scripts and style elements only with this answer's nonce, nothing from elsewhere,
 * no style attributes.
 * @param developing  React reads its own stack traces through `eval` while it is being developed, and only then
 */
export function contentPolicy(nonce: string, developing: boolean): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${developing ? " 'unsafe-eval'" : ""}`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/** What every answer carries besides its policy. A referrer is kept to the app itself: without one, forms lose their Origin. */
export const ANSWER_HEADERS: readonly (readonly [string, string])[] = [
  ["X-Content-Type-Options", "nosniff"],
  ["Referrer-Policy", "same-origin"],
  ["Cross-Origin-Opener-Policy", "same-origin"],
  ["Cross-Origin-Resource-Policy", "same-origin"],
  ["Permissions-Policy", "camera=(), geolocation=(), microphone=()"],
];
