"use client";

import { decimalTyped } from "@/lib/edge/notation";
import { type ReactNode, useRef, useState } from "react";
import { type Unit, UNITS } from "@/lib/domain/quantity";
import { readTypedAmount } from "@/lib/edge/forms/typed-amount";
import { densitiesFor, PUBLISHED_DENSITIES, type PublishedDensity } from "@/lib/edge/forms/published-densities";
import { useFormFollowed } from "@/app/_ui/form-followed";
import type { FormValues } from "@/app/_ui/form-values";

/**
 * Published densities, offered beside the field and never filled in unasked. Those of the name as it is typed stand
 * open; the others are one step away.
 */
export function DensityOffers({ values }: { readonly values: FormValues }): ReactNode {
  const [name, setName] = useState(values.name ?? "");
  const place = useRef<HTMLDivElement>(null);
  useFormFollowed(place, ({ name: typed = "" }) => {
    setName(typed);
  });
  const offered = densitiesFor(name);
  return (
    <div className="density-offers" ref={place}>
      {offered.map((published) => (
        <Published key={published.names[0]} published={published} />
      ))}
      <details>
        <summary>Published densities of common materials</summary>
        {PUBLISHED_DENSITIES.map((published) => (
          <Published key={published.names[0]} published={published} />
        ))}
      </details>
    </div>
  );
}

/** Under a row of materials, where its pack is a volume and its density is not written yet. */
export function DensityOfRow({
  row,
  values,
  known,
}: {
  /** As it is sent: `lines.4`. */
  readonly row: string;
  readonly values: FormValues;
  /** The names of the materials that there are: what is known of them stands. */
  readonly known: readonly string[];
}): ReactNode {
  const [typed, setTyped] = useState(values);
  const place = useRef<HTMLDivElement>(null);
  useFormFollowed(place, setTyped);
  const field = `${row}.density`;
  const { [`${row}.material`]: name = "", [`${row}.pack`]: pack = "", [field]: density = "" } = typed;
  const isKnown = known.some((each) => each.toLowerCase() === name.trim().toLowerCase());
  const offered = density.trim() !== "" || isKnown || !isVolume(pack) ? [] : densitiesFor(name);
  return (
    <div className="density-offers of-row" ref={place}>
      {offered.map((published) => (
        <Published key={published.names[0]} published={published} field={field} />
      ))}
    </div>
  );
}

function isVolume(typed: string): boolean {
  const [, unit = ""] = amountOf(typed).split(" ");
  return isUnit(unit) && UNITS[unit].kind === "volume";
}

const amountOf = (typed: string): string => {
  const read = readTypedAmount(typed);
  return "value" in read ? read.value : "";
};

const isUnit = (text: string): text is Unit => Object.hasOwn(UNITS, text);

function Published({
  published,
  field = "density",
}: {
  readonly published: PublishedDensity;
  /** The field that it is for. */
  readonly field?: string;
}): ReactNode {
  const { names, celsius, density, source, mark } = published;
  const at = `${names[0]} at ${String(celsius)} °C; ${source}${mark === "from memory" ? ", remembered and not seen in a copy" : ""}`;
  if (density.kind === "range of relative density")
    return (
      <p className="small">
        {decimalTyped(density.from)} to {decimalTyped(density.to)} times as heavy as water: {at}. A range gives no one
        figure; take your supplier’s.
      </p>
    );
  return (
    <p className="small">
      <button className="button plain" name="deed" value={`fill ${field} ${decimalTyped(density.gramsPerMillilitre)}`}>
        Use {decimalTyped(density.gramsPerMillilitre)} g/mL
      </button>{" "}
      {at}.
    </p>
  );
}
