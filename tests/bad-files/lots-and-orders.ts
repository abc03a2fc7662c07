import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const LOTS_AND_ORDERS: readonly BadFile[] = [
  {
    rule: "FILE-1",
    says: "a lot of a material that is not there",
    changes: { "lots[0].material": "gone" },
    faults: ['lots[0].material: no material "gone"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "a lot received tomorrow",
    changes: { "lots[0].received": "2026-11-26" },
    faults: ["lots[0].received: 2026-11-26 is after today (2026-11-25); what has not come yet is an order"],
  },
  {
    rule: "FILE-1",
    says: "a lot received after the real day, where the file sets none",
    changes: { "workshop.today": LEFT_OUT, "lots[0].received": "2026-11-26" },
    faults: ["lots[0].received: 2026-11-26 is after today (2026-11-25); what has not come yet is an order"],
  },
  {
    rule: "FILE-2",
    says: "no lot is held against a day that could not be read",
    changes: { "workshop.today": "today", "lots[0].received": "2026-11-26" },
    faults: ['workshop.today: must be a date as 2026-11-25 (year-month-day), not "today"'],
  },
  {
    rule: "DAY-1",
    says: "a lot that expires on no day",
    changes: { "lots[0].expires": "2026-02-30" },
    faults: ['lots[0].expires: no such day "2026-02-30"'],
  },
  {
    rule: "DAY-1",
    says: "a lot without the day it came",
    changes: { "lots[0].received": LEFT_OUT },
    faults: ['lots[0].received: missing; it must be a date in double quotes, as "2026-11-25"'],
  },
  {
    rule: "FILE-1",
    says: "nothing remains and yet it has a value",
    changes: { "lots[0].remaining": "0 g" },
    faults: ["lots[0].value: must be 0, because nothing remains of the lot"],
  },
  {
    rule: "QTY-4",
    says: "what remains rounds to nothing and yet it has a value",
    changes: { "lots[0].remaining": "0.0000004 g" },
    faults: ["lots[0].value: must be 0, because nothing remains of the lot"],
  },
  {
    rule: "FILE-1",
    says: "no remaining quantity",
    changes: { "lots[0].remaining": LEFT_OUT },
    faults: ['lots[0].remaining: missing; it must be an amount in double quotes, as "250 mL"'],
  },
  {
    rule: "FILE-3",
    says: "a repeated lot",
    changes: { "lots[1]": { id: "L1", material: "wax", received: "2026-10-01", remaining: "1 g", value: "1" } },
    faults: ['lots[1].id: repeated id "L1"; lots[0] has it already'],
  },
  {
    rule: "FILE-3",
    says: "a lot with the id of a line on order",
    changes: { "lots[0].id": "po1/1" },
    faults: ['lots[0].id: repeated id "po1/1": orders[0].lines[0] comes in under it'],
  },
  {
    rule: "FILE-3",
    says: "a lot with the id of a line on order whose order has other faults",
    changes: { "lots[0].id": "po1/1", "orders[0].due": "soon" },
    faults: [
      'orders[0].due: must be a date as 2026-11-25 (year-month-day), not "soon"',
      'lots[0].id: repeated id "po1/1": orders[0].lines[0] comes in under it',
    ],
  },
  {
    rule: "FILE-1",
    says: "an order without lines",
    changes: { "orders[0].lines": [] },
    faults: ["orders[0].lines: an order needs at least one line"],
  },
  {
    rule: "FILE-1",
    says: "an order whose lines are left out",
    changes: { "orders[0].lines": LEFT_OUT },
    faults: ["orders[0].lines: missing; it must be a list"],
  },
  {
    rule: "FILE-1",
    says: "an order line with a price for a cost",
    changes: { "orders[0].lines[0].cost": LEFT_OUT, "orders[0].lines[0].price": "6.10" },
    faults: [
      'orders[0].lines[0].cost: missing; it must be a decimal in double quotes, as "8.40"',
      "orders[0].lines[0].price: unknown key; take it out",
    ],
  },
  {
    rule: "FILE-1",
    says: "an order from a supplier that is not there",
    changes: { "orders[0].supplier": "gone" },
    faults: ['orders[0].supplier: no supplier "gone"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "an order line of a material that is not there",
    changes: { "orders[0].lines[0].material": "gone" },
    faults: ['orders[0].lines[0].material: no material "gone"; add it or correct the id'],
  },
  {
    rule: "DAY-1",
    says: "an order without the day it was placed",
    changes: { "orders[0].placed": LEFT_OUT },
    faults: ['orders[0].placed: missing; it must be a date in double quotes, as "2026-11-25"'],
  },
  {
    rule: "FILE-1",
    says: "an order line that expires before it is due",
    changes: { "orders[0].lines[0].expires": "2026-11-26" },
    faults: ["orders[0].lines[0].expires: 2026-11-26 is before the order is due (2026-11-27)"],
  },
  {
    rule: "FILE-2",
    says: "no expiry is held against a due day that could not be read",
    changes: { "orders[0].due": "2026-11-31", "orders[0].lines[0].expires": "2026-11-26" },
    faults: ['orders[0].due: no such day "2026-11-31"'],
  },
  {
    rule: "FILE-3",
    says: "a repeated order",
    changes: {
      "orders[1]": {
        id: "po1",
        supplier: "s1",
        placed: "2026-11-20",
        due: "2026-11-27",
        lines: [{ material: "wax", quantity: "1 g", cost: "0" }],
      },
    },
    faults: ['orders[1].id: repeated id "po1"; orders[0] has it already'],
  },
];
