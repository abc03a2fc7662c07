"use client";

import { useEffect } from "react";

/** Marks the document once the scripts of its first page have taken over, so that who drives it knows that typing is followed. */
export function ScriptsReady(): null {
  useEffect(() => {
    document.documentElement.dataset.scripts = "ready";
  }, []);
  return null;
}
