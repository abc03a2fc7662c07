/** Values of a form judged by the schemas of the file's fields, with what is wrong gathered by field. */
import type { z } from "zod";
import type { Density, Measure, Stock } from "@/lib/domain/quantity";
import { amount } from "@/lib/edge/figure-fields";
import { measured } from "@/lib/edge/workshop/amounts";
import { placedFaults } from "./faults-in-words";
import type { FieldFault, FormReading } from "./form-reading";

export interface MeasuredBy {
  readonly name: string;
  readonly measure: Measure;
  readonly density: Density | null;
}

export interface Judging {
  /** The value of a field, or undefined: it was left out, or what is wrong with it has been told. */
  readonly value: <T>(schema: z.ZodType<T>, typed: unknown, field: string) => T | undefined;
  /** A typed amount in whole µg or pieces of what it is an amount of. */
  readonly stock: (typed: unknown, of: MeasuredBy, least: 0n | 1n, field: string) => Stock | undefined;
  readonly tell: (field: string | null, message: string) => void;
  readonly faults: () => readonly FieldFault[];
}

/** @param reading  whose own faults come first; a field that has one is judged no further */
export function judging({ faults: before }: Pick<FormReading, "faults">): Judging {
  const faults: FieldFault[] = [...before];
  const isFaulty = (field: string): boolean => faults.some((fault) => fault.field === field);
  const tell = (field: string | null, message: string): void => {
    faults.push({ field, message });
  };
  const value: Judging["value"] = (schema, typed, field) => {
    if (typed === undefined || isFaulty(field)) return undefined;
    const read = schema.safeParse(typed);
    if (read.success) return read.data;
    tell(field, read.error.issues[0]?.message ?? "cannot be read");
    return undefined;
  };
  const stock: Judging["stock"] = (typed, { name, measure, density }, least, field) => {
    const placed = placedFaults();
    const read = measured<Stock>(value(amount, typed, field), { measure, density, called: name }, least, field, placed);
    for (const { where, what } of placed.placed()) tell(where, what);
    return read?.quantity;
  };
  return { value, stock, tell, faults: () => faults };
}
