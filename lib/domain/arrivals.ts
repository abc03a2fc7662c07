/** When orders come in, and by which day one must go out. @rule DAY-2, DAY-3, PLAN-2, PLAN-3, PLAN-6, ORDER-2 */
import {
  type Day,
  daysAfter,
  latestStartForWorkingDays,
  type WorkingCalendar,
  workingCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDayUpTo,
} from "./calendar";
import type { ShelfLot } from "./lots";
import { toCome } from "./orders";
import type { Order, Supplier } from "./workshop";

/** One supplier's days together with the workshop's. */
export interface Delivery {
  readonly supplier: Supplier;
  readonly suppliersDays: WorkingCalendar;
  readonly daysOfBoth: WorkingCalendar;
  /** Days on which the workshop takes nothing in. */
  readonly closedForArrivals: ReadonlySet<Day>;
}

export function deliveryFrom(supplier: Supplier, closedDaysOfWorkshop: readonly Day[]): Delivery {
  return {
    supplier,
    suppliersDays: workingCalendar(supplier.closedDays),
    daysOfBoth: workingCalendar([...supplier.closedDays, ...closedDaysOfWorkshop]),
    closedForArrivals: new Set(closedDaysOfWorkshop),
  };
}

/** How an order's arrival comes about. */
export interface ArrivalSteps {
  /** The first working day of both that is not before the day asked for. */
  readonly placed: Day;
  /** When the lead time is over. */
  readonly due: Day;
  /** The first day from then on that the workshop is open. */
  readonly arrives: Day;
}

/** @rule DAY-3 */
export function arrivalSteps(
  { supplier, suppliersDays, daysOfBoth, closedForArrivals }: Delivery,
  day: Day,
): ArrivalSteps {
  const placed = workingDayFrom(daysOfBoth, day);
  const due =
    supplier.leadCounts === "calendar"
      ? daysAfter(placed, supplier.leadDays)
      : workingDaysAfter(suppliersDays, placed, supplier.leadDays);
  let arrives = due;
  while (closedForArrivals.has(arrives)) arrives = daysAfter(arrives, 1);
  return { placed, due, arrives };
}

/** The day on which an order wanted to go out on `day` comes in. @rule DAY-3 */
export const arrivalOf = (delivery: Delivery, day: Day): Day => arrivalSteps(delivery, day).arrives;

/**
 * The latest working day of both on which an order may go out to come in no later than `neededBy`.
 * An arrival is moved on from closed days, so it must be due on an open one not after `neededBy`. @rule PLAN-6
 */
export function latestOrderDay(delivery: Delivery, neededBy: Day): Day {
  const { supplier, suppliersDays, daysOfBoth } = delivery;
  let lastOpen = neededBy;
  while (delivery.closedForArrivals.has(lastOpen)) lastOpen = daysAfter(lastOpen, -1);
  const latest =
    supplier.leadCounts === "calendar"
      ? daysAfter(lastOpen, -supplier.leadDays)
      : latestStartForWorkingDays(suppliersDays, lastOpen, supplier.leadDays);
  return workingDayUpTo(daysOfBoth, latest);
}

/** A line on order, on the day on which it is expected. */
export interface Arrival {
  readonly day: Day;
  readonly material: string;
  readonly lot: ShelfLot;
}

/**
 * What is still to come of every line on order, with the day it is expected and the lot it will be.
 * One due today or before has not been received: it is expected on the next working day of both. @rule PLAN-2, PLAN-3
 */
export function arrivalsOf(
  orders: readonly Order[],
  deliveryOf: (supplierId: string) => Delivery,
  today: Day,
): readonly Arrival[] {
  return orders.flatMap((order) => {
    const day =
      order.due > today ? order.due : workingDayFrom(deliveryOf(order.supplier).daysOfBoth, daysAfter(today, 1));
    return order.lines.flatMap((line, index) => {
      const rest = toCome(order, line);
      if (rest === 0n) return [];
      const lot = {
        id: lotIdOfLine(order.id, index),
        received: day,
        expires: line.expires,
        quantity: rest,
        value: null,
        order: order.id,
      };
      return [{ day, material: line.material, lot }];
    });
  });
}

/** The id under which a line comes in: the order's id and the line's number from 1. @rule PLAN-3 */
export const lotIdOfLine = (orderId: string, index: number): string => `${orderId}/${String(index + 1)}`;
