/** What a form remembers of the record that it was drawn from, to notice that somebody else has changed it since. */
import { createHash } from "node:crypto";
import type { TypedRecord } from "./form-reading";

/**
 * A fingerprint of a record as the file writes it: the same for the same content, whatever the order of its keys.
 * @returns sha-256 of the whole in hex; then, for each key, a short one, so that a later look can say which field changed
 */
export function fingerprint(record: TypedRecord): string {
  const fields = Object.keys(record)
    .filter((key) => record[key] !== undefined)
    .sort()
    .map((key) => `${encodeURIComponent(key)}=${fieldFingerprint(record[key])}`);
  return [digest(canonical(record)), ...fields].join(" ");
}

const SHORT = 16;

/** Sixteen hex digits of one field's value. */
export const fieldFingerprint = (value: unknown): string => digest(canonical(value)).slice(0, SHORT);

const digest = (text: string): string => createHash("sha256").update(text).digest("hex");

/** JSON with the keys of every object in order. */
const canonical = (value: unknown): string =>
  JSON.stringify(value ?? null, (_, inner: unknown) =>
    typeof inner === "object" && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
