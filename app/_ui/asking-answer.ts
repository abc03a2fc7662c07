/** A button beside a form's own, which sends `deed` with this value. */
export interface OtherButton {
  readonly deed: string;
  readonly label: string;
}

/** What a form of a few fields is told where it was not done. Where it was, the page goes on. */
export type AskingAnswer =
  | { readonly kind: "not sent" }
  | {
      readonly kind: "refused";
      /** As typed, so that nothing of it is lost. */
      readonly typed: Readonly<Record<string, string>>;
      /** By the name of the field. */
      readonly faults: Readonly<Partial<Record<string, string>>>;
      /** About the form as a whole. */
      readonly says: string | null;
      /** The button that says yes, where something is asked rather than refused. */
      readonly yes?: OtherButton;
    };

export const NOT_SENT: AskingAnswer = { kind: "not sent" };
