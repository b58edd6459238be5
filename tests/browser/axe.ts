import axe from "axe-core";
import type { Page } from "playwright-core";

/**
 * What axe-core finds wrong with a page as it stands, best practices included. Its source is evaluated over the
 * browser's debugging channel, which a page's policy does not govern: the policy stays in force meanwhile.
 * @returns one line for each node, as `color-contrast: #verdict: Element has insufficient …`
 */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations, passes } = await page.evaluate<AxeResult>(
    "axe.run(document, { resultTypes: ['violations', 'passes'] })",
  );
  if (passes.length === 0) throw new Error("axe-core judged nothing");
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(" ")}: ${failureSummary ?? ""}`),
  );
}

interface AxeResult {
  readonly violations: readonly AxeRule[];
  readonly passes: readonly AxeRule[];
}

interface AxeRule {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly string[]; readonly failureSummary?: string }[];
}
