import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Loading the sources anew for each file takes longer than most files do.
    isolate: false,
    maxWorkers: "100%",
  },
});
