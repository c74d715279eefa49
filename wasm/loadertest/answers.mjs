// Prints the native answers as a TypeScript program, in which the compiler holds
// every field of every answer against the declarations.
//
//   node answers.mjs answers.json >answers.ts

import { readFileSync } from "node:fs";

const { questions, sound } = JSON.parse(readFileSync(process.argv[2], "utf8"));
const types = { arrange: "Part", choices: "Choices", sheet: "Sheet", shapes: "Shapes", names: "Names", path: "Path", capo: "Capos" };

console.log('import type { Answer, Checked, Filled } from "weft";');
console.log(`import type { ${Object.values(types).join(", ")} } from "weft";`);
questions.forEach(({ ask, request, answer }, i) => {
  let type = types[ask] ?? "never";
  if (ask === "check") {
    type = answer.ok ? `Checked["${request.notation}"]` : "Checked[keyof Checked]";
  }
  if (ask !== "file" || !answer.ok) {
    console.log(`export const a${i}: Answer<${type}> = ${JSON.stringify(answer)};`);
  }
});
sound.filled.forEach((answer, i) => console.log(`export const s${i}: Answer<Filled> = ${JSON.stringify(answer)};`));
