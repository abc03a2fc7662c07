import type { AskedField } from "@/app/_ui/asking-form";

/** What is read of a trial, and when. */
export const READING_ASKED: readonly AskedField[] = [
  {
    name: "after",
    label: "How long after making",
    type: "text",
    value: "",
    hint: "As 1 h, 1 day or 1 week; empty for when it was made.",
  },
  { name: "ph", label: "pH", type: "text", value: "" },
  { name: "viscosity", label: "Viscosity, mPa·s", type: "text", value: "" },
  { name: "appearance", label: "Appearance", type: "text", value: "" },
];
