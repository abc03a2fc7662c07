"use client";

import type { ReactNode } from "react";
import type { BenchOnPage } from "./bench-view";
import { SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

const METER = [
  { name: "meter", label: "Meter (optional)" },
  { name: "calibrated", label: "Calibrated on (optional)" },
];

/** Everything that is written down beside the weights. */
export function NoteForms({ view, notes }: { readonly view: BenchOnPage; readonly notes: Notes }): ReactNode {
  const shared = { view, notes };
  const phases = view.phases.map((phase) => ({ value: phase, label: phase }));
  return (
    <section className="bench-notes" aria-labelledby="bench-notes">
      <h2 id="bench-notes">Write down something else</h2>
      <details className="opens">
        <summary>A temperature</summary>
        <SmallForm
          {...shared}
          carried={{ kind: "temperature" }}
          fields={[
            ...(phases.length > 0 ? [{ name: "phase", label: "Phase", options: phases }] : []),
            { name: "celsius", label: "Temperature, °C" },
            ...METER,
          ]}
          button="Write the temperature down"
        />
      </details>
      <details className="opens">
        <summary>A pH</summary>
        <SmallForm
          {...shared}
          carried={{ kind: "acidity" }}
          fields={[{ name: "ph", label: "pH" }, ...METER]}
          button="Write the pH down"
        />
      </details>
      <details className="opens">
        <summary>Something added beside the formula</summary>
        <p className="label">
          A pH adjuster drop by drop, or water made up for what evaporated: it leaves the shelf too.
        </p>
        <SmallForm
          {...shared}
          carried={{ kind: "added" }}
          fields={[
            { name: "of", label: "What, and of which lot", options: view.stock },
            { name: "weight", label: "How much, g" },
            { name: "why", label: "What for" },
          ]}
          button="Write the addition down"
        />
      </details>
      <details className="opens">
        <summary>What was seen</summary>
        <SmallForm
          {...shared}
          carried={{ kind: "seen" }}
          fields={[
            { name: "what", label: "What was looked at, as appearance or viscosity" },
            { name: "found", label: "What was found" },
          ]}
          button="Write down what was seen"
        />
      </details>
    </section>
  );
}
