/**
 * What the page's own script does, and nothing else: sort a table by a column, filter its rows, copy it, and change
 * between metres and feet. It makes its controls itself, so that without it there are none.
 */
export const PAGE_SCRIPT = `"use strict";
(() => {
  const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text }, more);
  const root = document.documentElement;

  const switchUnits = () => {
    const bar = make("div", "", { className: "tools" });
    bar.setAttribute("role", "group");
    bar.setAttribute("aria-label", "Units of tables and key figures");
    const buttons = [["m", "metres"], ["ft", "feet"]].map(([unit, word]) => {
      const button = make("button", word, { type: "button" });
      button.addEventListener("click", () => {
        root.dataset.length = unit;
        show();
      });
      bar.append(button);
      return [unit, button];
    });
    const show = () => {
      for (const [unit, button] of buttons) button.setAttribute("aria-pressed", String(root.dataset.length === unit));
    };
    show();
    document.querySelector(".top").append(bar);
  };

  const keyOf = (row, column) => {
    const cell = row.cells[column];
    const figure = cell.querySelector("data");
    return figure === null ? cell.innerText.trim() : Number(figure.value);
  };
  const compare = (a, b) => {
    if (typeof a === "number" && typeof b === "number") return a - b;
    if (typeof a !== typeof b) return typeof a === "number" ? -1 : 1;
    return a.localeCompare(b, "en", { numeric: true });
  };
  const NEXT = { none: "ascending", ascending: "descending", descending: "none" };

  const sortable = (table) => {
    const body = table.tBodies[0];
    const asGiven = [...body.rows];
    const heads = [...table.tHead.rows[0].cells];
    heads.forEach((head, column) => {
      const button = make("button", "", { type: "button" });
      button.append(...head.childNodes);
      head.append(button);
      button.addEventListener("click", () => {
        const order = NEXT[head.getAttribute("aria-sort") ?? "none"];
        for (const each of heads) each.removeAttribute("aria-sort");
        if (order !== "none") head.setAttribute("aria-sort", order);
        const way = order === "descending" ? -1 : 1;
        const rows = [...asGiven];
        if (order !== "none") rows.sort((a, b) => way * compare(keyOf(a, column), keyOf(b, column)));
        body.append(...rows);
      });
    });
  };

  const filterable = (table, bar, status) => {
    const label = make("label", "Filter ");
    const field = make("input", "", { type: "search" });
    label.append(field);
    field.addEventListener("input", () => {
      const sought = field.value.trim().toLowerCase();
      const rows = [...table.tBodies[0].rows];
      for (const row of rows) row.hidden = !row.textContent.toLowerCase().includes(sought);
      const shown = rows.filter((row) => !row.hidden).length;
      status.textContent = sought === "" ? "" : shown + " of " + rows.length + " rows";
    });
    bar.append(label);
  };

  const cellText = (cell) => {
    const text = cell.innerText.trim().replace(/\\s+/g, " ").replace(/\\u2212/g, "-");
    const runs = /^[=+@-]/.test(text) && !/^-?[0-9.]+( |$)/.test(text);
    return runs ? "'" + text : text;
  };
  const copyable = (table, bar, status) => {
    const button = make("button", "Copy table", { type: "button" });
    button.addEventListener("click", async () => {
      const rows = [table.tHead.rows[0], ...table.tBodies[0].rows].filter((row) => !row.hidden);
      const text = rows.map((row) => [...row.cells].map(cellText).join("\\t")).join("\\n");
      try {
        await navigator.clipboard.writeText(text);
        status.textContent = "Copied";
      } catch {
        getSelection().selectAllChildren(table);
        status.textContent = "Selected: copy it with the keyboard or the menu";
      }
    });
    bar.append(button);
  };

  switchUnits();
  for (const table of document.querySelectorAll("table[data-tools]")) {
    const bar = make("div", "", { className: "tools" });
    const status = make("span", "");
    status.setAttribute("role", "status");
    const name = table.caption.textContent;
    sortable(table);
    if (table.tBodies[0].rows.length >= 8) filterable(table, bar, status);
    copyable(table, bar, status);
    bar.append(status);
    bar.setAttribute("role", "group");
    bar.setAttribute("aria-label", "Tools of the table: " + name);
    table.parentElement.before(bar);
  }
})();
`;
