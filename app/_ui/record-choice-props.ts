import type { ChoiceGroup } from "./choice-filter";

/** What a choice of a record is drawn from, as the browser's own and as the list that takes its place. */
export interface RecordChoiceProps {
  readonly id: string;
  /** Under which it is sent. */
  readonly name: string;
  readonly value: string;
  /** What stands for nothing chosen; null where something always is. */
  readonly none: string | null;
  readonly groups: readonly ChoiceGroup[];
  /** Where the field stands for two references: which of them a name that is none of the choices is sent for. */
  readonly either?: string | undefined;
  readonly "aria-label"?: string | undefined;
  readonly "aria-required"?: boolean | undefined;
  readonly "aria-invalid"?: boolean | undefined;
  readonly "aria-describedby"?: string | undefined;
}
