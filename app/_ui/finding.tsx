import type { ReactNode } from "react";

/** How a page opens: where one is, its title, its answer in a sentence or two, and beside them what can be chosen. */
export function Opening({
  crumb,
  title,
  beside,
  children,
}: {
  readonly crumb?: ReactNode;
  readonly title: string;
  readonly beside?: ReactNode;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <div className="opening">
      <div>
        {crumb && <p className="crumb">{crumb}</p>}
        <h1>{title}</h1>
        <p className="finding">{children}</p>
      </div>
      {beside && <div>{beside}</div>}
    </div>
  );
}
