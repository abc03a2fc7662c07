import type { ReactNode } from "react";
import { RibbonAxis, RibbonInks, RibbonKey } from "@/app/_ui/ribbon";
import { RibbonKeys } from "@/app/_ui/ribbon-keys";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { counted } from "@/lib/edge/counted";
import { countShown, dayShown } from "@/lib/edge/figures";
import { ribbonAxis } from "@/lib/edge/ribbon-axis";
import { DocketGroup } from "./docket";
import { DueDocket, NotOfferedDocket, OrderDocket, orderFor } from "./order-dockets";
import { LeftOpenDocket, NotClosedDocket, RunDocket, ToJudgeDocket } from "./run-dockets";
import { CountDocket, ExpiryDocket } from "./stock-dockets";
import type { Today } from "./today";

interface Part {
  readonly of: Today;
}

/** What asks for a hand, the most pressing first; what is quiet is said in one line. @rule TODAY-2 */
export function Dockets({ of }: Part): ReactNode {
  const { matters, plan, today } = of;
  const [now, soon] = orderDockets(of);
  return (
    <div className="dockets">
      <RibbonInks />
      <RibbonKeys>
        <div className="dockets-axis">
          <RibbonAxis axis={ribbonAxis(today, plan.lastDay)} />
        </div>
        <DocketGroup name="Order today" of={materials(matters.orderNow.length)} dockets={now} more={TO_BUY} />
        <Making of={of} />
        <DocketGroup
          name="Due in"
          of={counted(matters.dueIn.length, "order", "orders")}
          dockets={matters.dueIn.map((order) => (
            <DueDocket key={order.id} order={order} of={of} />
          ))}
          more={{ href: "/buying/orders", name: "All orders" }}
        />
        <OnTheShelf of={of} />
        <DocketGroup name="Order soon" of="by the end of next week" dockets={soon} more={TO_BUY} />
        <Quiet of={of} />
      </RibbonKeys>
    </div>
  );
}

const TO_BUY = { href: "/shelf?show=order", name: "All that is to be bought" } as const;
const WEEKS = { href: "/week", name: "All runs by week" } as const;

const materials = (count: number): string => counted(count, "material", "materials");

/** Those for today and those for soon; each supplier's order is offered once. */
function orderDockets(of: Today): readonly [readonly ReactNode[], readonly ReactNode[]] {
  const drawn = new Set<string>();
  const docket = (outlook: MaterialOutlook): ReactNode => {
    const supplier = orderFor(of, outlook.material.id)?.supplier.id;
    const again = supplier !== undefined && drawn.has(supplier);
    if (supplier !== undefined) drawn.add(supplier);
    return <OrderDocket key={outlook.material.id} outlook={outlook} of={of} again={again} />;
  };
  return [of.matters.orderNow.map(docket), of.matters.orderSoon.map(docket)];
}

function Making({ of }: Part): ReactNode {
  const { notMakeable, notOffered, leftOpen, toJudge, notClosed } = of.matters;
  return (
    <>
      <DocketGroup
        name="Cannot be made"
        of={`${countShown(notMakeable.length)} of ${counted(of.plan.runs.length, "run", "runs")}`}
        dockets={notMakeable.map((outlook) => (
          <RunDocket key={outlook.run.id} outlook={outlook} of={of} />
        ))}
        more={WEEKS}
      />
      <DocketGroup
        name="Offered by nobody"
        of={materials(notOffered.length)}
        dockets={notOffered.map((outlook) => (
          <NotOfferedDocket key={outlook.material.id} outlook={outlook} of={of} />
        ))}
        more={TO_BUY}
      />
      <DocketGroup
        name="At the bench"
        of={counted(leftOpen.length + toJudge.length, "batch", "batches")}
        dockets={[
          ...leftOpen.map((batch) => <LeftOpenDocket key={batch.code} batch={batch} of={of} />),
          ...toJudge.map((batch) => <ToJudgeDocket key={batch.code} batch={batch} of={of} />),
        ]}
        more={{ href: "/bench", name: "All batches" }}
      />
      <DocketGroup
        name="Not closed"
        of={counted(notClosed.length, "run", "runs")}
        dockets={notClosed.map((outlook) => (
          <NotClosedDocket key={outlook.run.id} outlook={outlook} of={of} />
        ))}
        more={WEEKS}
      />
    </>
  );
}

function OnTheShelf({ of }: Part): ReactNode {
  const { goingOut, toCount } = of.matters;
  return (
    <>
      <DocketGroup
        name="Going out of date"
        of={materials(goingOut.length)}
        dockets={goingOut.map((outlook) => (
          <ExpiryDocket key={outlook.material.id} outlook={outlook} of={of} />
        ))}
        more={{ href: "/shelf?show=date", name: "All materials going out of date" }}
      />
      <DocketGroup
        name="To count"
        of={`${materials(toCount.length)}, as often as you said`}
        dockets={toCount.map((matter) => (
          <CountDocket key={matter.outlook.material.id} matter={matter} of={of} />
        ))}
        more={{ href: "/shelf/count?lots=due", name: "Count what is due" }}
      />
    </>
  );
}

function Quiet({ of: { matters, plan, today } }: Part): ReactNode {
  return (
    <div className="dockets-foot">
      <p className="quiet">
        <b>Nothing else needs a hand.</b>{" "}
        {matters.quiet > 0 &&
          `${countShown(matters.quiet)} of ${countShown(plan.materials.length)} materials cover every planned run to ${dayShown(plan.lastDay, today)}.`}
      </p>
      <RibbonKey />
    </div>
  );
}
