import type { ReactNode } from "react";

/** What a form carries beside what is typed into it. */
export const Hidden = ({ values }: { readonly values: Readonly<Record<string, string>> }): ReactNode =>
  Object.entries(values).map(([name, value]) => <input key={name} type="hidden" name={name} value={value} readOnly />);
