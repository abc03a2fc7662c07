import Form from "next/form";
import Link from "next/link";
import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";
import { asSentence } from "@/app/_ui/sentence";
import type { Supplier } from "@/lib/domain/workshop";
import { daysShown } from "@/lib/edge/figures";
import { type Cover, COVERS, type FrameReading } from "@/lib/edge/forms/buying-frame";

interface FrameOf {
  readonly reading: FrameReading;
  readonly suppliers: readonly Supplier[];
  readonly horizonDays: number;
  readonly coverDays: number | null;
}

/** For how long to buy, from whom not, and whether it must come in time. It asks by address and needs no script. */
export function FrameForm({ reading: { asked, daysFault }, suppliers, horizonDays, coverDays }: FrameOf): ReactNode {
  const words: Readonly<Record<Cover, string>> = {
    "as set": `As set in the book: ${coverDays === null ? "the whole horizon" : daysShown(coverDays)}`,
    week: "One week",
    "four weeks": "Four weeks",
    horizon: `The whole horizon, ${daysShown(horizonDays)}`,
    days: "The days written here",
  };
  return (
    <Form action="/buying" scroll={false} prefetch={false} className="buying-frame" aria-labelledby="frame">
      <h2 id="frame">Buy for how long, and from whom</h2>
      {/* What is chosen goes with the address: another frame draws its fields anew, and the button keeps the focus. */}
      <div className="buying-frame-fields" key={JSON.stringify(asked)}>
        <div className="field">
          <label htmlFor="frame-cover">Cover</label>
          <select id="frame-cover" name="cover" defaultValue={asked.cover}>
            {COVERS.map((cover) => (
              <option key={cover} value={cover}>
                {words[cover]}
              </option>
            ))}
          </select>
        </div>
        <Field
          label="Days to cover"
          name="days"
          inputMode="numeric"
          autoComplete="off"
          defaultValue={asked.days}
          fault={daysFault === null ? undefined : asSentence(daysFault)}
        />
        <fieldset className="buying-ticks">
          <legend>Leave out</legend>
          {suppliers.map(({ id, name }) => (
            <label key={id}>
              <input type="checkbox" name="out" value={id} defaultChecked={asked.leftOut.includes(id)} />
              {name}
            </label>
          ))}
        </fieldset>
        <fieldset className="buying-ticks">
          <legend>Time</legend>
          <label>
            <input type="checkbox" name="intime" value="yes" defaultChecked={asked.mustBeInTime} />
            Everything must come in time
          </label>
        </fieldset>
      </div>
      <div className="buying-frame-buttons">
        <button className="button">Find the least cost</button>
        <Link className="button plain" href="/buying">
          As set in the book
        </Link>
      </div>
    </Form>
  );
}
