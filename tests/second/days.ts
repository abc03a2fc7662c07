/** Calendar days of the second implementation: every arrival and every order day is found by walking the days. */
import type { FileSupplier, WorkshopFile } from "./file-shape";

/** Days since 1 January 1970. */
export const day = (date: string): number => Date.parse(`${date}T00:00:00Z`) / 86_400_000;
export const date = (of: number): string => new Date(of * 86_400_000).toISOString().slice(0, 10);

export interface Diary {
  readonly isHome: (of: number) => boolean;
  readonly supplierWorks: (supplier: FileSupplier, of: number) => boolean;
  readonly bothWork: (supplier: FileSupplier, of: number) => boolean;
  readonly arrival: (supplier: FileSupplier, orderedFrom: number) => number;
  readonly orderBy: (supplier: FileSupplier, neededBy: number) => number;
}

const isWeekday = (of: number): boolean => ![0, 6].includes(new Date(of * 86_400_000).getUTCDay());

export function diaryOf(file: WorkshopFile): Diary {
  const homeClosed = new Set((file.workshop.closedDays ?? []).map(day));
  const supplierClosed = new Map(
    file.suppliers.map(({ id, closedDays }) => [id, new Set((closedDays ?? []).map(day))]),
  );

  const isHome = (of: number) => !homeClosed.has(of);
  const supplierWorks = (supplier: FileSupplier, of: number) =>
    isWeekday(of) && supplierClosed.get(supplier.id)?.has(of) === false;
  const bothWork = (supplier: FileSupplier, of: number) => supplierWorks(supplier, of) && isHome(of);

  const arrival = (supplier: FileSupplier, orderedFrom: number) => {
    let at = orderedFrom;
    while (!bothWork(supplier, at)) at += 1;
    if (supplier.leadCounts === "calendar") at += supplier.leadDays;
    else
      for (let waited = 0; waited < supplier.leadDays; waited += 1) {
        at += 1;
        while (!supplierWorks(supplier, at)) at += 1;
      }
    while (!isHome(at)) at += 1;
    return at;
  };

  // Nothing comes sooner than its lead in calendar days, so the walk back can begin there.
  const orderBy = (supplier: FileSupplier, neededBy: number) => {
    let at = neededBy - supplier.leadDays;
    while (!bothWork(supplier, at) || arrival(supplier, at) > neededBy) at -= 1;
    return at;
  };

  return { isHome, supplierWorks, bothWork, arrival, orderBy };
}
