import type { ReactNode } from "react";
import "./book.css";

export default function BookLayout({ children }: { readonly children: ReactNode }): ReactNode {
  return children;
}
