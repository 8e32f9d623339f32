// Refuses a module that imports anything, then has it check vessels:
//   node call.mjs MODULE FOLDER DEPARTURE RETURN FILE…
// The JSON and the HTML of each vessel are written into the folder.
import { readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";

const [path, folder, departure, back, ...files] = process.argv.slice(2);
const module = new WebAssembly.Module(readFileSync(path));
const imports = WebAssembly.Module.imports(module);
if (imports.length > 0) {
  const names = imports.map((one) => `${one.module}.${one.name}`);
  console.error(`the module imports ${names.slice(0, 8).join(", ")} (${names.length} in all)`);
  process.exit(1);
}
const { memory, room, check } = new WebAssembly.Instance(module).exports;
for (const file of files) {
  const head = `${file} ${departure} ${back}\n`;
  const request = Buffer.concat([Buffer.from(head), readFileSync(file)]);
  const at = room(request.length) >>> 0;
  new Uint8Array(memory.buffer).set(request, at);
  const answer = BigInt.asUintN(64, check(at, request.length));
  const bytes = Buffer.from(memory.buffer, Number(answer >> 32n), Number(answer & 0xffffffffn));
  const end = bytes.indexOf(0);
  if (end < 0) {
    console.error(`${file}: ${bytes}`);
    process.exit(1);
  }
  const into = join(folder, basename(file, ".yaml"));
  writeFileSync(`${into}.json`, bytes.subarray(0, end));
  writeFileSync(`${into}.html`, bytes.subarray(end + 1));
}
