"use client";

import { usePathname, useRouter } from "next/navigation";
import { type KeyboardEvent, type ReactNode, useEffect, useEffectEvent, useRef } from "react";

/** Letters typed one after another are asked for together. */
const A_PAUSE_MILLISECONDS = 120;

interface Looked {
  readonly typed: string;
  /** Letters that are looked for at most. */
  readonly most: number;
  /** What was found. */
  readonly children: ReactNode;
}

/**
 * What is looked for, and under it what was found. The list follows the typing; Down and Up walk from the field through
 * what was found, Enter opens it, Escape comes back to the field.
 */
export function FindField({ typed, most, children }: Looked): ReactNode {
  const [router, path] = [useRouter(), usePathname()];
  const field = useRef<HTMLInputElement>(null);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const ask = (): void => {
    clearTimeout(waiting.current);
    waiting.current = setTimeout(() => {
      waiting.current = undefined;
      const query = new URLSearchParams({ q: field.current?.value ?? "" });
      router.replace(`${path as "/find"}?${query.toString()}`, { scroll: false });
    }, A_PAUSE_MILLISECONDS);
  };
  // Typed before the scripts were there.
  const askTyped = useEffectEvent(() => {
    if (field.current && field.current.value !== typed) ask();
  });
  useEffect(() => {
    askTyped();
    // What is asked for after the page was left would bring it back.
    return () => {
      clearTimeout(waiting.current);
    };
  }, []);
  // Another address, as by Back, and nothing typed since: the field follows it.
  const follow = useEffectEvent((now: string) => {
    if (waiting.current === undefined && field.current) field.current.value = now;
  });
  useEffect(() => {
    follow(typed);
  }, [typed]);
  return (
    <div
      onKeyDown={walk}
      onClickCapture={() => {
        clearTimeout(waiting.current);
        waiting.current = undefined;
      }}
    >
      <form action="/find" method="get" role="search" className="find">
        <div className="field">
          <label htmlFor="find">Find anything</label>
          {/* It is what the page is for. */}
          <input
            ref={field}
            id="find"
            type="search"
            name="q"
            defaultValue={typed}
            maxLength={most}
            autoComplete="off"
            autoFocus
            onInput={ask}
          />
        </div>
        <button className="button" type="submit">
          Find it
        </button>
      </form>
      {children}
    </div>
  );
}

function walk(event: KeyboardEvent<HTMLElement>): void {
  const { target, currentTarget, key } = event;
  if (!(target instanceof HTMLElement) || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const field = currentTarget.querySelector("input");
  const stops = [field, ...currentTarget.querySelectorAll<HTMLElement>("section a")].filter((stop) => stop !== null);
  const at = stops.indexOf(target);
  if (at < 0) return;
  if (key === "ArrowDown") stops[at + 1]?.focus();
  else if (key === "ArrowUp") stops[at - 1]?.focus();
  else if (key === "Escape" && at > 0) field?.focus();
  else return;
  event.preventDefault();
}
