// Draws client/icons/sparwright.png from the svg beside it. Needs Chromium; run by hand when the drawing changes.
import { readFileSync } from "node:fs";
import { chromium } from "playwright-core";

const folder = new URL("../client/icons/", import.meta.url);
const svg = readFileSync(new URL("sparwright.svg", folder), "utf8");
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu"],
});
const page = await browser.newPage({ viewport: { width: 128, height: 128 } });
await page.setContent(`<body style="margin:0">${svg}`);
await page.screenshot({ path: new URL("sparwright.png", folder).pathname, omitBackground: true });
await browser.close();
