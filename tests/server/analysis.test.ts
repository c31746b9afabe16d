import { describe, expect, it } from "vitest";
import { analyseText, testService } from "../service";

const uri = "memory:/design.airframe";

const design = `airframe "Dunlin" { class = sport }
wing main { at = (200 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 120 g ± 4 g ; panel half { span = 500 mm ; chord = 200 mm ± 1 mm } }
body pod { at = (0 mm, 0 mm, 0 mm) ; length = 400 mm ; width = 50 mm ; weight = 60 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (250 mm, 0 mm, 0 mm) }
require stability.static_margin > 20 %
`;

function versions(...texts: string[]) {
  const service = testService();
  return texts.map((text, version) => {
    service.update({ uri, text, version });
    return service.analysis(uri)!;
  });
}

describe("an edit that changes nothing but comments and spaces", () => {
  const text = `# a note\n${design.replace("sport }", "sport }   # not a trainer")}`;
  const [, after] = (() => {
    const service = testService();
    service.update({ uri, text: design, version: 1 });
    const before = service.analysis(uri)!.finishNow();
    service.update({ uri, text, version: 2 });
    return [before, service.analysis(uri)!] as const;
  })();

  it("is complete at once, with the figures of before", () => {
    expect(after.complete).toBe(true);
    expect(after.sets[0].all().length).toBeGreaterThan(20);
  });
  it("finds what the text alone would give, where it stands now", () => {
    const alone = analyseText(text);
    expect(alone.findings.length).toBeGreaterThan(0);
    expect(after.findings).toEqual(alone.findings);
  });
});

describe("any other edit", () => {
  it("is worked out anew", () => {
    const [, moved] = versions(design, design.replace("250 mm", "251 mm"));
    expect(moved.complete).toBe(false);
  });
  it.each([
    ["a quoted # is no comment", design.replace('"Dunlin"', '"Dun#lin"'), design.replace('"Dunlin"', '"Dun#lon"')],
    ["a comment begun before code", design, design.replace("battery pack", "# battery pack")],
    ["a comment ended", `# a${design}`, `# a\n${design}`],
  ])("%s: it counts", (_, one, other) => {
    const service = testService();
    service.update({ uri, text: one, version: 1 });
    service.analysis(uri)!.finishNow();
    service.update({ uri, text: other, version: 2 });
    expect(service.analysis(uri)!.complete).toBe(false);
  });
  it("within a comment it costs nothing, ends of the file included", () => {
    for (const [one, other] of [[`${design}# a`, `${design}# ab`], [`#\n${design}`, `#"#\n${design}`]]) {
      const service = testService();
      service.update({ uri, text: one, version: 1 });
      service.analysis(uri)!.finishNow();
      service.update({ uri, text: other, version: 2 });
      expect(service.analysis(uri)!.complete).toBe(true);
    }
  });
  it.each([["a line end between entries", design.replace(" ; weight = 60 g", "\n weight = 60 g")], ["a string", design.replace("Dunlin", "Dun lin")]])(
    "%s counts as text", (_, other) => {
      const service = testService();
      service.update({ uri, text: design, version: 1 });
      service.analysis(uri)!.finishNow();
      service.update({ uri, text: other, version: 2 });
      expect(service.analysis(uri)!.complete).toBe(false);
    });
});
