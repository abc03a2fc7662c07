import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { gramsShown, stockInFull, stockShown } from "@/lib/edge/figures";
import { decimalsOf } from "../bench-on-page";
import { plannedLots } from "../sheet-lines";

/** What the run takes of each material, and the lots that it is planned from; each lot is confirmed when it is weighed. */
export function Drawn({
  outlook: { draws, day },
  workshop,
}: {
  readonly outlook: RunOutlook;
  readonly workshop: Workshop;
}): ReactNode {
  const decimals = decimalsOf(workshop.settings.balanceStep.quantity);
  const planned = plannedLots(
    workshop,
    draws.map(({ material, need }) => ({ key: material.id, material: material.id, rest: need })),
    day,
  );
  return (
    <section aria-labelledby="drawn">
      <h2 id="drawn">What it takes</h2>
      <Ledger
        caption="What it takes of each material, and the lots that it is planned from"
        columns={[{ name: "Material" }, { name: "Planned lots" }, { name: "Takes", kind: "number" }]}
      >
        {draws.map(({ material, need, there }) => (
          <tr key={material.id}>
            <th scope="row">{material.name}</th>
            <td className="second-line">{(planned.get(material.id) ?? []).join(", ")}</td>
            <td className="number end">
              {material.measure === "mass" ? gramsShown(need, decimals) : stockInFull(need, material.measure)}
              {there < need && (
                <small className="warn">
                  <Sign sign="box" tone="wrong">
                    short {stockShown(need - there, material.measure, "lacking")}
                  </Sign>
                </small>
              )}
            </td>
          </tr>
        ))}
      </Ledger>
    </section>
  );
}
