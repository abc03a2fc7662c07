/** What the form of a formula asks besides the formula: whether it is its next version, and why. @rule VERSION-2 */
import type { FormField } from "@/lib/edge/forms/form-fields";
import { optional, TEXT, YES_OR_NO } from "@/lib/edge/forms/form-fields";

export const MOST_OF_A_WHY = 1000;

export const WHY: FormField = optional("versionWhy", "What this change is for", TEXT, {
  hint: "Kept with its version. Needed once a batch was made by the version that stands.",
});
export const AS_NEXT: FormField = optional("asNextVersion", "Begin the next version with this", YES_OR_NO, {
  hint: "The one that stands is kept as it is. Happens by itself once a batch was made by it.",
});
