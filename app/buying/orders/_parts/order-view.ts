/** What every part of an order's page is drawn from. */
import type { Day } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import type { Order, Supplier, Workshop } from "@/lib/domain/workshop";

export interface OrderView {
  readonly order: Order;
  readonly supplier: Supplier;
  readonly workshop: Workshop;
  readonly today: Day;
  readonly goods: MicroUnits;
  /** As the supplier asks it today. */
  readonly shipping: MicroUnits;
}
