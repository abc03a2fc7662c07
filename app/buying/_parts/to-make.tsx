import type { ReactNode } from "react";
import { MakeIt } from "@/app/_ui/make-it";
import { MakeWorking } from "@/app/_ui/make-working";
import type { RunInstead } from "@/lib/domain/run-instead";
import type { Material } from "@/lib/domain/workshop";
import type { BuyingView } from "./buying-view";

/** Materials that nobody offers because they are made here, each with the run that makes it. @rule AHEAD-9 */
export function ToMake({
  made,
  view,
}: {
  readonly made: readonly { readonly material: Material; readonly instead: RunInstead }[];
  readonly view: BuyingView;
}): ReactNode {
  if (made.length === 0) return null;
  return (
    <section className="block" aria-labelledby="to-make">
      <h2 id="to-make">To be made, not bought</h2>
      <ul className="fault-list">
        {made.map(({ material, instead }) => (
          <li key={material.id}>
            <b>{material.name}</b>. <MakeIt instead={instead} today={view.today} />
            <MakeWorking instead={instead} measure={material.measure} today={view.today} />
          </li>
        ))}
      </ul>
    </section>
  );
}
