/**
 * Rows with commas between the fields and CRLF after each row (RFC 4180). A text that a spreadsheet would take for a
 * formula has an apostrophe before it, as OWASP advises against CSV injection.
 */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map((fields) => `${fields.map(csvField).join(",")}\r\n`).join("");

function csvField(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
