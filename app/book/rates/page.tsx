import type { Metadata } from "next";
import type { ReactNode } from "react";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { writtenSettings } from "@/lib/edge/forms/written-record";
import { Opening } from "@/app/_ui/finding";
import { moneyShown } from "@/lib/edge/figures";
import { BookForm } from "@/app/book/_parts/book-form";
import { Crumb } from "@/app/book/_parts/crumb";
import { formOf } from "@/app/book/_parts/form-of-record";
import { keepSettings } from "../actions";
import { booksForPage } from "../books-for-page";

export const metadata: Metadata = { title: "Rates and calendar" };

/** What holds for the whole workshop: what an hour costs, taxes and fees, the calendar, how far to plan. */
export default async function RatesPage(): Promise<ReactNode> {
  const { books } = await booksForPage();
  const { settings } = books.workshop;
  const record = writtenSettings(books.workshop);
  const hour = settings.labourPerHour + settings.overheadPerHour;
  return (
    <>
      <Opening crumb={<Crumb />} title="Rates and calendar">
        {hour === 0n ? (
          <>
            An hour at the bench <b>costs nothing yet</b>: every jar is priced without your time.
          </>
        ) : (
          <>
            An hour at the bench costs <b>{moneyShown(hour, settings.currency)}</b>, labour and overhead together.
          </>
        )}
      </Opening>
      <BookForm
        kind="settings"
        {...formOf(books, "settings", record, false)}
        seen={fingerprint(record)}
        send={keepSettings}
        buttons={[{ deed: "keep", label: "Keep rates and calendar" }]}
      />
    </>
  );
}
