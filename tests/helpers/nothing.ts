// Stands in for `server-only` in tests: that module throws outside a server bundle.
export {};
