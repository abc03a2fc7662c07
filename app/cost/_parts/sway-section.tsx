import type { ReactNode } from "react";
import { swayOfKept } from "@/lib/domain/sway";
import { inWords } from "@/lib/edge/counted";
import { priceShown } from "@/lib/edge/figures";
import { Choice } from "@/app/_ui/choice";
import { Ledger } from "@/app/_ui/ledger";
import { SwayChart } from "@/app/_ui/sway-chart";
import { type Asked, productAddress } from "./basis";
import type { CostView } from "./cost-view";
import { PRICE_NAME, SOLD, type Sold } from "./sold";
import { isWorse, type SwayRow, swayRow } from "./sway-rows";

/** The table has all; so many of the longest are drawn. */
const MOST_DRAWN = 8;

/** How far what is kept of one sways with each input, drawn and as a table. */
export function SwaySection({ view, asked }: { readonly view: CostView; readonly asked: Asked }): ReactNode {
  return (
    <section className="block sway" aria-labelledby="sway">
      <h2 id="sway">If one thing changes by 10{"\u00a0"}%</h2>
      <Choice
        name="What is kept of one"
        options={SOLD.map((sold) => ({
          href: productAddress(view.product.id, { ...asked, sold }),
          label: `Sold to ${sold}`,
          chosen: sold === asked.sold,
        }))}
      />
      <SwayOf sold={asked.sold} view={view} />
    </section>
  );
}

function SwayOf({ sold, view }: { readonly sold: Sold; readonly view: CostView }): ReactNode {
  const { product, cost, settings, currency } = view;
  const price = product[PRICE_NAME[sold]];
  if (price === null)
    return <p className="small soft">No price to {sold} is set, so nothing is kept that could change.</p>;
  const sways = swayOfKept(cost, product, { of: sold, price }, settings);
  if (sways === null) return <p className="small soft">Not known while the cost is not.</p>;
  const rows = sways.map((sway) => swayRow(sway, sold, view));
  const drawn = rows.filter(({ moves }) => moves).slice(0, MOST_DRAWN);
  return (
    <>
      <p className="label sway-about">
        More or less kept of one sold at {priceShown(price, currency)}, everything else as it is.
        {drawn.length < rows.length && ` The ${inWords(drawn.length)} that move it most; the table has all.`}
      </p>
      <div className="sway-figure">
        <p className="sway-head" aria-hidden="true">
          <span>10{"\u00a0"}% worse</span>
          <span>10{"\u00a0"}% better</span>
        </p>
        <SwayChart says={inASentence(drawn, sold)} bars={drawn.map(barOf)} />
      </div>
      <details className="as-table">
        <summary>Show as table</summary>
        <SwayTable rows={rows} sold={sold} />
      </details>
    </>
  );
}

/** Only what is drawn goes to the browser. */
const barOf = ({ name, worse, better, worseShown, betterShown }: SwayRow) => ({
  name,
  worse,
  better,
  worseShown,
  betterShown,
});

const inASentence = (rows: readonly SwayRow[], sold: Sold): string =>
  `What is kept of one sold to ${sold} where one thing is a tenth less or more, longest first: ${rows
    .map(({ name, worseShown, betterShown }) => `${name} ${worseShown} to ${betterShown}`)
    .join("; ")}.`;

const COLUMNS = [
  { name: "What changes" },
  { name: "10\u00a0% less", kind: "number" },
  { name: "10\u00a0% more", kind: "number" },
] as const;

function SwayTable({ rows, sold }: { readonly rows: readonly SwayRow[]; readonly sold: Sold }): ReactNode {
  return (
    <Ledger caption={`Change of what is kept of one sold to ${sold}`} columns={COLUMNS} className="sway-table">
      {rows.map(({ name, how, less, more }) => (
        <tr key={name}>
          <th scope="row">
            {name}
            <small>{how}</small>
          </th>
          <Change shown={less} />
          <Change shown={more} />
        </tr>
      ))}
    </Ledger>
  );
}

const Change = ({ shown }: { readonly shown: string }): ReactNode => (
  <td className="number">
    <span className={isWorse(shown) ? "warn" : undefined}>{shown}</span>
  </td>
);
