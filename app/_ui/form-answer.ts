/** What a form is told after it was sent. Where all is well the page goes on, and there is nothing to tell. */
import type { ShownTable } from "@/lib/edge/forms/shown-table";
import type { FormValues } from "./form-values";

export interface FormFault {
  /** The name under which the field was sent; null where it is about the whole. */
  readonly name: string | null;
  readonly message: string;
}

/** A field that somebody else has changed since the form was drawn. */
export interface Meanwhile {
  readonly label: string;
  readonly here: string;
  readonly there: string;
}

export type FormAnswer =
  | { readonly kind: "not sent" }
  /** Sent by a button that only rearranges the form: there is nothing to keep yet. */
  | { readonly kind: "rearrange"; readonly values: FormValues; readonly deed: string }
  | {
      readonly kind: "refused";
      /** As typed, so that nothing of it is lost. */
      readonly values: FormValues;
      readonly faults: readonly FormFault[];
      /** What the change would make wrong elsewhere. */
      readonly breaks: readonly string[];
    }
  /** Sent to see what it would come to: nothing is kept. */
  | { readonly kind: "shown"; readonly values: FormValues; readonly shown: ShownTable }
  | {
      readonly kind: "changed meanwhile";
      readonly values: FormValues;
      /** What was changed; empty where the record is gone. */
      readonly changes: readonly Meanwhile[];
      /** The fingerprint of what is kept now: who has seen the changes may keep theirs in its place. */
      readonly seenNow: string | null;
    };

/** The deed by which what was written of a record that is gone is kept as a new one. */
export const ANEW = "anew";

/** Whether the record that the form was drawn from was removed. */
export const isGone = (answer: FormAnswer): boolean =>
  answer.kind === "changed meanwhile" && answer.changes.length === 0;

export const NOT_SENT: FormAnswer = { kind: "not sent" };
