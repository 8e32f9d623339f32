// Where the named places of a PDF are, as far as the browser writes them in
// plain: pages, their order, and the destinations of links within.

/** The number of pages, and for each name its page and how far below the top. */
export function destinations(pdf) {
  const text = Buffer.from(pdf).toString("latin1");
  const objects = new Map();
  for (const [, number, body] of text.matchAll(/(?:^|[\r\n])(\d+) 0 obj\b([\s\S]*?)endobj/g)) {
    objects.set(Number(number), body);
  }
  const root = Number(/\/Root (\d+) 0 R/.exec(text)?.[1]);
  const catalog = objects.get(root) ?? "";
  const order = [];
  const walk = (number) => {
    const body = objects.get(number) ?? "";
    if (/\/Type\s*\/Pages\b/.test(body)) {
      const kids = /\/Kids\s*\[([^\]]*)\]/.exec(body)?.[1] ?? "";
      for (const [, kid] of kids.matchAll(/(\d+) 0 R/g)) walk(Number(kid));
    } else if (body) {
      order.push(number);
    }
  };
  walk(Number(/\/Pages (\d+) 0 R/.exec(catalog)?.[1]));
  const heights = order.map((number) => Number(/\/MediaBox\s*\[\s*0 0 [\d.]+ ([\d.]+)/.exec(objects.get(number))?.[1] ?? 0));
  const places = new Map();
  for (const body of objects.values()) {
    for (const [, name, number, y] of body.matchAll(/\/([^\s/[\]<>()]+)\s*\[\s*(\d+) 0 R\s*\/XYZ\s+[\d.-]+\s+([\d.-]+)/g)) {
      const page = order.indexOf(Number(number));
      if (page >= 0) {
        places.set(decodeURIComponent(name.replace(/#([0-9a-fA-F]{2})/g, "%$1")), { page, fromTop: Math.round(heights[page] - Number(y)) });
      }
    }
  }
  return { pages: order.length, places };
}
