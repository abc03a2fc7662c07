import type { Metadata } from "next";
import { cookies } from "next/headers";
import Link from "next/link";
import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { Crumb } from "@/app/book/_parts/crumb";
import { type Query, textIn } from "@/app/book/_parts/addresses";
import { ratio } from "@/lib/domain/fraction";
import { type Locale, LOCALES } from "@/lib/domain/notation";
import { countShown, dayShown, moneyShown } from "@/lib/edge/figures";
import { massShown } from "@/lib/edge/mass-shown";
import { SINGLE_KEYS } from "@/lib/edge/single-keys";
import { booksForPage } from "../books-for-page";
import { keepNotation, switchKeys } from "./actions";

export const metadata: Metadata = { title: "Figures and keys" };

/** Whose way of writing numbers it is. */
const LOCALE_WORDS: Readonly<Record<Locale, string>> = {
  "en-GB": "Britain",
  "en-IE": "Ireland",
  "en-US": "United States",
  "en-CA": "Canada, in English",
  "en-AU": "Australia",
  "en-NZ": "New Zealand",
  "en-IN": "India",
  "de-DE": "Germany",
  "fr-FR": "France",
  "nl-NL": "Netherlands",
  "pl-PL": "Poland",
  "pt-BR": "Brazil",
  "sv-SE": "Sweden",
};

const UNIT_WORDS = [
  { value: "metric", label: "Grams and kilograms" },
  { value: "US", label: "Ounces and pounds" },
] as const;

/** How figures are written, for the whole workshop; and single keys, for this device. @rule SHOW-1 */
export default async function ScreenPage({
  searchParams,
}: {
  readonly searchParams: Promise<Query>;
}): Promise<ReactNode> {
  const [{ books, today }, query, jar] = await Promise.all([booksForPage(), searchParams, cookies()]);
  const { workshop, desk } = books;
  return (
    <>
      <Opening crumb={<Crumb />} title="Figures and keys">
        A kilogram and a half is written <b>{massShown(1_500_000_000n, "nearest")}</b>, a price{" "}
        <b>{moneyShown(ratio(1_234_500_000n, 1n), workshop.settings.currency)}</b>, a day{" "}
        <b>{dayShown(today, today, { year: true })}</b>, a large number <b>{countShown(1_234_567n)}</b>.
      </Opening>
      {textIn(query, "kept") === "figures" && (
        <p className="done" role="status">
          Figures are written like this from now on, on every page.
        </p>
      )}
      <section className="matters" aria-labelledby="figures">
        <h2 id="figures">
          Figures <small>for the whole workshop</small>
        </h2>
        <div className="also">
          <AskingForm
            key={`${desk.notation.locale} ${desk.notation.units}`}
            act={keepNotation}
            carried={{}}
            button="Write figures like this"
            fields={[
              {
                name: "units",
                label: "Weights",
                type: "choice",
                value: desk.notation.units,
                options: UNIT_WORDS,
                hint: "What you type stays in the unit that you typed. Workings and the bench stay in grams, as the balance reads.",
              },
              {
                name: "locale",
                label: "Numbers, money and dates as in",
                type: "choice",
                value: desk.notation.locale,
                options: LOCALES.map((value) => ({ value, label: LOCALE_WORDS[value] })),
                hint: "The words stay English. In a field the decimal mark of that place is always one.",
              },
            ]}
          />
        </div>
      </section>
      <Keys isOn={jar.get("keys")?.value === "on"} />
    </>
  );
}

function Keys({ isOn }: { readonly isOn: boolean }): ReactNode {
  return (
    <section className="matters" aria-labelledby="keys">
      <h2 id="keys">
        Single keys <small>for this device</small>
      </h2>
      <div className="also">
        <p>
          {isOn
            ? "On: one key goes to a place, as long as nothing is being typed."
            : "Off. Turned on, one key goes to a place, as long as nothing is being typed."}
        </p>
        <ul className="key-list">
          {SINGLE_KEYS.map(({ key, goes, words }) => (
            <li key={key}>
              <kbd>{key}</kbd> <Link href={goes}>{words}</Link>
            </li>
          ))}
        </ul>
        <form action={switchKeys}>
          <button className="button" name="keys" value={isOn ? "off" : "on"}>
            {isOn ? "Turn single keys off" : "Turn single keys on"}
          </button>
        </form>
        <p>
          Always on: Tab and Enter everywhere; Up and Down through rows, Right and Left to open and close them and to
          walk along their ribbons; on the week, arrow keys through the places of a run that is being moved; at the
          bench, Enter writes a weight down.
        </p>
      </div>
    </section>
  );
}
