import { expect, it } from "vitest";
import { analyseText } from "../../service";

const single = `servo rud { weight = 20 g ; at = (0 mm, 0 mm, 0 mm) }
fin upright { at = (0 mm, 0 mm, 0 mm) ; weight = 9 g ; panel only { span = 90 mm ; chord = 60 mm } ; rudder full { chord = 40 % ; along = 0 % to 100 % ; servo = rud } }
`;

// The name is written in this file, in a block that was copied, and only the copied file has what it names.
it("a servo named anew in a copied rudder, and not declared here, is asked for by its own name", () => {
  const text = `use "single.airframe" as single
fin upright from single.upright { rudder full { servo = rud } }
`;
  const [finding, ...others] = analyseText(text, { "single.airframe": single }).findings.filter((f) => f.severity === "error");
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ code: "not_declared_here", place: { start: text.indexOf("rud }"), end: text.indexOf("rud }") + 3 } });
  expect(finding.message).toBe(`the copy needs a servo "rud" that is not here; what has weight is declared in the file it flies in`);
  expect(finding.fixes?.map((fix) => fix.title)).toEqual(["Declare servo rud from single.rud { }"]);
});
