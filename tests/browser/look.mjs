// Looks at pages of HTML as their readers do, and says what is wrong.
// Usage: node look.mjs PAGE.html …  (called by run.sh, which sets the browser)
import { createRequire } from "node:module";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { destinations } from "./pdf.mjs";

const require = createRequire(join(process.env.KITMUSTER_MODULES, "package.json"));
const { chromium } = require("playwright-core");
const axe = require("axe-core").source;

const FLAGS = [
  "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync",
];
const WIDTHS = [360, 1280];
const SCHEMES = ["light", "dark"];
// What is left of each paper between the margins of base.css, in CSS pixels
// (96 to the inch): 12 mm on either side.
const PAPERS = { A4: 210 - 24, Letter: 215.9 - 24 };
// How high a box may be: a page between the margins of the card, 7 mm each,
// less the foot that stands on every page.
const ROOM = { A4: 297 - 14 - 25, Letter: 279.4 - 14 - 25 };
// The smallest type on a screen, in CSS pixels: to be read in sunlight.
const SMALLEST = Number(process.env.KITMUSTER_SMALLEST ?? 16);

const wrong = [];
const complain = (page, what) => wrong.push(`${page}: ${what}`);

// What a reader would stumble over, found inside the page.
function stumbles(smallest) {
  const found = [];
  const room = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > room) {
    found.push(`scrolls sideways: ${document.documentElement.scrollWidth} of ${room}`);
  }
  const name = (e) => `<${e.tagName.toLowerCase()} ${e.getAttribute("class") ?? ""}> "${e.textContent.trim().slice(0, 40)}"`;
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const small = new Set();
  while (texts.nextNode()) {
    const e = texts.currentNode.parentElement;
    if (!texts.currentNode.data.trim() || e.closest("title, desc")) continue;
    const svg = e.closest("svg");
    const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    const size = parseFloat(getComputedStyle(e).fontSize) * scale;
    if (size < smallest - 0.05) small.add(`type of ${size.toFixed(1)} px: ${name(e)}`);
  }
  found.push(...[...small].slice(0, 5));
  for (const svg of document.querySelectorAll("svg")) {
    const box = svg.viewBox.baseVal;
    const labels = [...svg.querySelectorAll("text")].map((e) => [e, e.getBBox()]);
    for (const [e, b] of labels) {
      if (b.x < 0 || b.y < 0 || b.x + b.width > box.width || b.y + b.height > box.height) {
        found.push(`cut off in ${svg.id || svg.querySelector("title")?.textContent}: ${name(e)} at ${b.x.toFixed(0)}+${b.width.toFixed(0)}, ${b.y.toFixed(0)}+${b.height.toFixed(0)}`);
      }
    }
    labels.forEach(([e, a], i) => labels.slice(i + 1).forEach(([other, b]) => {
      // Line boxes are taller than letters: a little of them may overlap.
      const over = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      const beside = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      if (over > 4 && beside > 0) found.push(`labels overlap: ${name(e)} and ${name(other)} in ${svg.querySelector("title")?.textContent}`);
    }));
  }
  return found;
}

// Type of a wall card that cannot be read at arm's length, found inside the
// page. The same sizes hold on screen and paper: 24 px are 18 pt, 16 px 12 pt.
function tooSmallForAWall(least) {
  if (!document.querySelector(".wall-card")) return { found: [], sizes: {} };
  const wanted = {
    headings: ["h1, h2, h3, h4, h5, h6, .loud .big", 24],
    steps: [".steps li", 16],
    situations: [".situation, .situation *, .loud li, .loud p", 16],
    prohibitions: [".never li, .stop, .mind p:first-child", 16],
    everything: ["body *:not(title, style, svg *)", least],
  };
  const found = [], sizes = {};
  for (const [what, [selector, size]] of Object.entries(wanted)) {
    const all = [...document.querySelectorAll(selector)].filter((e) => e.textContent.trim());
    if (all.length === 0) found.push(`no ${what} on the card`);
    const measured = all.map((e) => parseFloat(getComputedStyle(e).fontSize));
    sizes[what] = Math.min(...measured);
    if (sizes[what] < size - 0.05) found.push(`${what} of ${sizes[what].toFixed(1)} px, at least ${size} px wanted`);
  }
  for (const e of document.querySelectorAll(".situation .what, .loud li, .steps li")) {
    const { width } = e.getBoundingClientRect();
    if (width < 110) found.push(`squeezed to ${width.toFixed(0)} px: "${e.textContent.trim().slice(0, 40)}"`);
  }
  return { found, sizes };
}

// Boxes of a wall card that a page's end could tear, and headings that could
// be left alone at its foot, found inside the page as it is printed.
function tears(height) {
  const found = [];
  const name = (e) => `<${e.tagName.toLowerCase()} ${e.getAttribute("class") ?? ""}> "${e.textContent.trim().slice(0, 40)}"`;
  for (const e of document.querySelectorAll(".wall-card :is(.box, .card, .never, .loud, .situations li)")) {
    if (getComputedStyle(e).breakInside !== "avoid") found.push(`may be torn: ${name(e)}`);
    if (e.getBoundingClientRect().height > height) found.push(`is higher than a page: ${name(e)}`);
  }
  for (const e of document.querySelectorAll(".wall-card :is(h2, h3)")) {
    const kept = getComputedStyle(e).breakAfter === "avoid" || e.closest(".never, .along");
    if (!kept) found.push(`may stand alone at the foot of a page: ${name(e)}`);
  }
  return found;
}

// What sticks out of the paper, found inside the page.
function sticksOut(width) {
  const found = [];
  for (const e of document.body.querySelectorAll("*")) {
    const box = e.getBoundingClientRect();
    if (box.width > 0 && (box.right > width + 1 || box.left < -1)) {
      found.push(`<${e.tagName.toLowerCase()} ${e.getAttribute("class") ?? ""}> ${box.left.toFixed(0)} to ${box.right.toFixed(0)} of ${width.toFixed(0)}: "${e.textContent.trim().slice(0, 40)}"`);
    }
  }
  return found.slice(0, 5);
}

async function onScreen(context, path) {
  for (const width of WIDTHS) {
    for (const colorScheme of SCHEMES) {
      const at = `${basename(path)} at ${width} px, ${colorScheme}`;
      const page = await context.newPage();
      page.on("console", (message) => message.type() === "error" && complain(at, `console: ${message.text()}`));
      page.on("pageerror", (error) => complain(at, `error: ${error.message}`));
      page.on("dialog", (dialog) => { complain(at, `a dialog: ${dialog.message()}`); dialog.dismiss(); });
      await page.setViewportSize({ width, height: 800 });
      await page.emulateMedia({ colorScheme });
      await page.goto(pathToFileURL(path).href);
      for (const what of await page.evaluate(stumbles, SMALLEST)) complain(at, what);
      for (const what of (await page.evaluate(tooSmallForAWall, 16)).found) complain(at, what);
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() => axe.run(document, {
        resultTypes: ["violations"],
        rules: { "color-contrast-enhanced": { enabled: true } },
      }));
      for (const { id, help, nodes } of violations) {
        complain(at, `${id}: ${help}: ${nodes.slice(0, 3).map((node) => `${node.target} ${node.failureSummary.split("\n")[1] ?? ""}`).join(" | ")} (${nodes.length})`);
      }
      await page.close();
    }
  }
}

async function onPaper(context, path, folder) {
  for (const [format, millimetres] of Object.entries(PAPERS)) {
    const at = `${basename(path)} on ${format}`;
    const page = await context.newPage();
    await page.emulateMedia({ media: "print", colorScheme: "light" });
    const width = (millimetres / 25.4) * 96;
    await page.setViewportSize({ width: Math.floor(width), height: 900 });
    await page.goto(pathToFileURL(path).href);
    for (const what of await page.evaluate(sticksOut, width)) complain(at, `wider than the paper: ${what}`);
    const card = await page.evaluate(tooSmallForAWall, 12);
    for (const what of card.found) complain(at, what);
    for (const what of await page.evaluate(tears, (ROOM[format] / 25.4) * 96)) complain(at, what);
    if (card.sizes.steps) {
      const points = Object.entries(card.sizes).map(([what, size]) => `${what} ${(size * 0.75).toFixed(1)} pt`);
      console.log(`${at}: smallest ${points.join(", ")}`);
    }
    const wanted = await page.evaluate(() => [...document.querySelectorAll("article.vessel")].map((e) => e.id));
    const linked = await page.evaluate(() => [...document.querySelectorAll("a[href^='#']")].map((e) => e.getAttribute("href").slice(1)));
    const pdf = await page.pdf({ format, printBackground: true, preferCSSPageSize: false });
    writeFileSync(join(folder, `${basename(path, ".html")}-${format}.pdf`), pdf);
    const { pages, places } = destinations(pdf);
    if (pages === 0) complain(at, "no pages");
    for (const id of linked.filter((id) => card.sizes.steps && !places.has(id))) {
      complain(at, `the box \`${id}\` is nowhere on paper`);
    }
    // A vessel is found on paper by the links that lead to it.
    const taken = new Map();
    for (const id of wanted.filter((id) => linked.includes(id))) {
      const place = places.get(id);
      if (!place) { complain(at, `\`${id}\` is nowhere on paper`); continue; }
      if (place.page === 0) complain(at, `\`${id}\` does not begin on a page of its own`);
      if (taken.has(place.page)) complain(at, `\`${id}\` begins on the page of \`${taken.get(place.page)}\``);
      taken.set(place.page, id);
      if (place.fromTop > 80) complain(at, `\`${id}\` begins ${place.fromTop} points below the top of its page`);
    }
    console.log(`${at}: ${pages} pages, ${taken.size} vessels found on pages of their own`);
    await page.close();
  }
}

const profile = mkdtempSync(join(tmpdir(), "kitmuster-browser-"));
const folder = join(process.env.KITMUSTER_MODULES, "paper");
rmSync(folder, { recursive: true, force: true });
(await import("node:fs")).mkdirSync(folder, { recursive: true });
const context = await chromium.launchPersistentContext(profile, {
  executablePath: process.env.KITMUSTER_BROWSER, args: FLAGS, offline: true,
});
await context.route("**/*", (route) => {
  const { protocol } = new URL(route.request().url());
  if (protocol === "file:" && route.request().isNavigationRequest()) return route.continue();
  complain(route.request().frame().url(), `asks for ${route.request().url()}`);
  return route.abort();
});
try {
  for (const path of process.argv.slice(2).map((path) => resolve(path))) {
    await onScreen(context, path);
    await onPaper(context, path, folder);
  }
} finally {
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
if (process.argv.length < 3) wrong.push("no page was named");
for (const what of wrong) console.error(what);
console.log(wrong.length === 0 ? "every page stands" : `${wrong.length} things are wrong`);
process.exit(wrong.length === 0 ? 0 : 1);
