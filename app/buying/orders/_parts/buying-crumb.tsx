import Link from "next/link";
import type { ReactNode } from "react";

/** Where the pages below buying stand. */
export const BuyingCrumb = ({ orders = false }: { readonly orders?: boolean }): ReactNode => (
  <>
    <Link href="/buying">Buying</Link>
    {orders && (
      <>
        {" · "}
        <Link href="/buying/orders">Orders</Link>
      </>
    )}
  </>
);
