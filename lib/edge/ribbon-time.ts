/**
 * Time across a ribbon: linear, from the start of today to the end of the last day, counted in quarter days so that
 * every moment is a whole number. What goes out of date does so at a day's end, deliveries come in the morning,
 * runs draw at mid-day.
 */
import { type Day, daysBetween } from "@/lib/domain/calendar";
import type { ShelfEvent } from "@/lib/domain/plan-figures";

export const TICKS_A_DAY = 4;

const TICK_OF: Readonly<Record<ShelfEvent["kind"], number>> = { "written off": 0, arrived: 1, settled: 1, drawn: 2 };

/** The ticks from the start of `today` to the end of `lastDay`. */
export const spanOf = (today: Day, lastDay: Day): number => (daysBetween(today, lastDay) + 1) * TICKS_A_DAY;

/** The tick at which a day begins. */
export const tickOf = (day: Day, today: Day): number => daysBetween(today, day) * TICKS_A_DAY;

/** A place across the ribbon in percent, for the attributes of a drawing that is as wide as its column. */
export const percentAcross = (ticks: number, span: number): string => `${Math.round((ticks / span) * 10_000) / 100}%`;

export interface TimedEvent {
  readonly tick: number;
  readonly event: ShelfEvent;
}

/** The events with their ticks, which never run backwards: what arrives out of date is written off after it arrived. */
export function timed(events: readonly ShelfEvent[], today: Day): readonly TimedEvent[] {
  let tick = 0;
  return events.map((event) => {
    tick = Math.max(tick, tickOf(event.day, today) + TICK_OF[event.kind]);
    return { tick, event };
  });
}
