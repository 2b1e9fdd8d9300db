// Stands in for the package of this name, which throws outside a React server build. Tests call server code directly.
export {};
