/** Places on the week that other pages point to. An id of a file may hold any character, an anchor may not. */
import { isoDate } from "@/lib/domain/calendar";
import type { Run } from "@/lib/domain/workshop";

export const runAnchor = (id: string): string => `run-${encodeURIComponent(id)}`;

/** The run's week with that run open. */
export const runAddress = ({ id, date }: Pick<Run, "id" | "date">): `/week?${string}` =>
  `/week?${new URLSearchParams({ of: isoDate(date), run: id }).toString()}#${runAnchor(id)}`;
