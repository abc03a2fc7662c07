import type { Route } from "next";
import { costAddress, draftAddress, recordAddress, stepOf, trialAddress } from "@/lib/edge/book-address";
import type { Section } from "./sections";

/** The id that a step of an address names, or null where it is no text. */
export function idOf(step: string): string | null {
  try {
    const id = decodeURIComponent(step);
    return id.startsWith("~") ? id.slice(1) : id;
  } catch {
    return null;
  }
}

type Asked = Readonly<Record<string, string>>;

const asking = (path: string, asked: Asked): Route => {
  const query = new URLSearchParams(asked).toString();
  return (query === "" ? path : `${path}?${query}`) as Route;
};

export const sectionPath = (section: Section, asked: Asked = {}): Route => asking(`/book/${section}`, asked);
export const newPath = (section: Section, asked: Asked = {}): Route => asking(`/book/${section}/new`, asked);
export const recordPath = (section: Section, id: string, asked: Asked = {}): Route =>
  asking(recordAddress(section, id), asked);
/** A batch of a formula: what to weigh, and what would go wrong. */
export const batchPath = (formula: string, asked: Asked = {}): Route =>
  asking(`/book/formulas/${stepOf(formula)}/batch`, asked);
/** One material of a formula in the place of another, looked at before anything is kept. */
export const swapPath = (formula: string, asked: Asked = {}): Route =>
  asking(`/book/formulas/${stepOf(formula)}/swap`, asked);
/** The versions of a formula, and two of them side by side. */
export const versionsPath = (formula: string, asked: Asked = {}): Route =>
  asking(`/book/formulas/${stepOf(formula)}/versions`, asked);
/** The trials of a formula beside one another. */
export const trialsPath = (formula: string, asked: Asked = {}): Route =>
  asking(`/book/formulas/${stepOf(formula)}/trials`, asked);
export const newTrialPath = (formula: string, asked: Asked = {}): Route =>
  asking(`/book/formulas/${stepOf(formula)}/trials/new`, asked);
/** One trial, to be put right or removed. */
export const trialPath = (formula: string, trial: string): Route => trialAddress(formula, trial) as Route;
/** A label as it is printed, on a sheet of labels. */
export const labelPath = (label: string, asked: Asked = {}): Route =>
  asking(`/book/labels/${stepOf(label)}/print`, asked);
export const draftPath = (id: string): Route => draftAddress(id) as Route;
/** What one of a product costs, on the place of that name. */
export const costPath = (product: string): Route => costAddress(product) as Route;
export const comparePath = (asked: Asked = {}): Route => asking("/book/formulas/compare", asked);

/** What an address carries: each key once, several times or not at all. */
export type Query = Readonly<Record<string, string | readonly string[] | undefined>>;

export const textIn = (query: Query, key: string): string => {
  const value = query[key];
  return typeof value === "string" ? value : "";
};
