"use client";

import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";

interface Pressed {
  readonly act: (form: FormData) => Promise<void>;
  readonly carried: Readonly<Record<string, string>>;
  readonly children: ReactNode;
  /** Said in place of what is shown, where that is not enough by itself. */
  readonly name?: string | undefined;
  readonly className?: string;
  /** One of several places that arrow keys walk through. */
  readonly place?: string;
}

/** One button that does one thing, with or without scripts. Pressed twice it is sent once. */
export function Press({ act, carried, children, name, className = "button", place }: Pressed): ReactNode {
  return (
    <form action={act} className="press">
      {Object.entries(carried).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} readOnly />
      ))}
      <Button className={className} name={name} place={place}>
        {children}
      </Button>
    </form>
  );
}

function Button({
  className,
  name,
  place,
  children,
}: Pick<Pressed, "name" | "children"> & {
  readonly className: string;
  readonly place: string | undefined;
}): ReactNode {
  const { pending } = useFormStatus();
  return (
    <button
      className={className}
      aria-label={name}
      data-place={place}
      aria-disabled={pending ? true : undefined}
      onClick={(event) => {
        if (pending) event.preventDefault();
      }}
    >
      {children}
    </button>
  );
}
