/** Plain data as the tree that the file's readers read, without writing and reading JSON in between. */
import { type Json, numberAsWritten } from "@/lib/edge/json-tree";

/** A key whose value is undefined is left out; what JSON does not know is text, and refused as such. */
export function plainTree(value: unknown): Json {
  if (value === null || typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "number") return numberAsWritten(String(value));
  if (Array.isArray(value)) return value.map(plainTree);
  if (typeof value !== "object") return typeof value;
  const tree = new Map<string, Json>();
  for (const [key, inner] of Object.entries(value)) if (inner !== undefined) tree.set(key, plainTree(inner));
  return tree;
}
