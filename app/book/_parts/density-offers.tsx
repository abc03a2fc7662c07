"use client";

import { type ReactNode, useRef, useState } from "react";
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

function Published({ published }: { readonly published: PublishedDensity }): ReactNode {
  const { names, celsius, density, source, mark } = published;
  const at = `${names[0]} at ${String(celsius)} °C; ${source}${mark === "from memory" ? ", remembered and not seen in a copy" : ""}`;
  if (density.kind === "range of relative density")
    return (
      <p className="small">
        {density.from} to {density.to} times as heavy as water: {at}. A range gives no one figure; take your supplier’s.
      </p>
    );
  return (
    <p className="small">
      <button className="button plain" name="deed" value={`fill density ${density.gramsPerMillilitre}`}>
        Use {density.gramsPerMillilitre} g/mL
      </button>{" "}
      {at}.
    </p>
  );
}
