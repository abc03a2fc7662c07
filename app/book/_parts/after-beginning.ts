/** Where a form that begins the next version of a formula goes on, or what it is told. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Refused } from "@/lib/edge/forms/change-record";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { versionsPath } from "./addresses";

type Begun = { readonly kind: "begun" | "stands already" | "no such formula" | "no workshop" } | Refused;

export function afterBeginning(formula: string, typed: Readonly<Record<string, string>>, told: Begun): AskingAnswer {
  const refused = (says: string): AskingAnswer => ({ kind: "refused", typed, faults: {}, says });
  switch (told.kind) {
    case "no workshop":
      return refused("No workshop is open any more. Open one on the first page.");
    case "no such formula":
      return refused("This formula is not there any more; it was removed meanwhile.");
    case "refused":
      return refused(
        [...told.faults.map(({ message }) => message), ...told.breaks].map((each) => `${each}.`).join(" "),
      );
    case "begun":
    case "stands already":
      revalidatePath("/", "layout");
      return redirect(versionsPath(formula));
  }
}
