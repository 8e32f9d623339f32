//! Good tools of every kind, written from the rules' texts: those of
//! Appendix F to 50 CFR part 622 and those of 50 CFR 635.21(c)(5)(i) until
//! 28 November 2024. Long tools are 12 ft long, enough for a rail of 8 ft.

use super::{Outfit, vessel};

/// Tools that Appendix F (as in force since the 2019 rules) takes.
pub(crate) mod appendix_f {
    pub(crate) const CUTTER: &str = "{ mark: LC-1, kind: long-handled line cutter, handle: 12 ft, cuts-monofilament: 2.1 mm, protected-blade: yes, blades-replaceable: yes }";
    pub(crate) const BLADES: &str = "{ mark: BL-1, kind: set of replacement blades, fits: [LC-1] }";
    pub(crate) const INTERNAL: &str = "{ mark: DI-1, kind: long-handled dehooker for internal hooks, handle: 12 ft, rod: 1/4 in, material: 316L, end-diameter: 1 3/4 in, end: pigtail, shields-point: yes, controls-leader: yes, no-unprotected-points: yes, sized-for-hooks: yes }";
    pub(crate) const EXTERNAL: &str = "{ mark: DE-1, kind: long-handled dehooker for external hooks, handle: 12 ft, rod: 1/4 in, material: 316L, end-diameter: 1 3/4 in, end: j, blunt-end: yes }";
    pub(crate) const BOAT_HOOK: &str = "{ mark: BH-1, kind: boat hook, handle: 12 ft, end: boat hook, securely-attached: yes, material: aluminium }";
    pub(crate) const DIP_NET: &str = "{ mark: DN-1, kind: dip net, handle: 12 ft, hoop-inside: 31 in, bag-depth: 38 in, mesh: 3 in, carries: 100 lb, no-sharp-edges: yes }";
    pub(crate) const HOOP_NET: &str = "{ mark: HN-1, kind: collapsible hoop net, rope-length: 12 ft, hoop-inside: 31 in, bag-depth: 38 in, mesh: 3 in, carries: 100 lb }";
    pub(crate) const HOIST: &str = "{ mark: HO-1, kind: small hoist, rope-length: 12 ft, hoop-inside: 31 in, mesh: 3 in, carries: 100 lb, frame-of-pvc: no }";
    pub(crate) const TIRE: &str =
        "{ mark: TI-1, kind: tire, no-steel-belts: yes, sized-for-turtles: yes }";
    pub(crate) const SHORT_INTERNAL: &str = "{ mark: SI-1, kind: short-handled dehooker for internal hooks, shaft: 20 in, handle: 20 in, rod: 1/4 in, material: 316L, end-diameter: 1 7/8 in, t-handle: 5 in, shields-point: yes, bite-block-installed: yes, bite-block-plastic: yes, bite-block-inside: 3/4 in, bite-block-length: 5 in, bite-block-slide: 5 in, no-unprotected-points: yes }";
    pub(crate) const SHORT_EXTERNAL: &str = "{ mark: SE-1, kind: short-handled dehooker for external hooks, shaft: 20 in, rod: 1/4 in, material: 316L, t-handle: 5 in, blunt-end: yes }";
    pub(crate) const PLIERS: &str = "{ mark: PL-1, kind: needle-nose pliers, overall: 11 in }";
    pub(crate) const BOLT_CUTTERS: &str = "{ mark: BC-1, kind: bolt cutters, overall: 14 in, blade-length: 4 in, blade-width: 2 1/4 in, cuts-hook: 1/4 in }";
    pub(crate) const LINE_CUTTERS: &str = "{ mark: MC-1, kind: monofilament line cutters, overall: 6 in, blade-length: 1 in, blade-width: 5/8 in }";
    pub(crate) const BLOCK: &str = "{ mark: WB-1, kind: block of hard wood, length: 10 in, width: 3/4 in, thickness: 3/4 in, no-splinters: yes, smooth-edges: yes }";
    pub(crate) const GAGS: [&str; 3] = [
        "{ mark: CG-1, kind: canine mouth gag, nominal-size: 5 in, material: stainless }",
        "{ mark: CG-2, kind: canine mouth gag, nominal-size: 6 in, material: stainless }",
        "{ mark: CG-3, kind: canine mouth gag, nominal-size: 7 in, material: stainless }",
    ];
    pub(crate) const BONES: [&str; 2] = [
        "{ mark: CB-1, kind: dog chew bone, length: 7 in, material: nylon }",
        "{ mark: CB-2, kind: dog chew bone, length: 4 in, material: nylon }",
    ];
    pub(crate) const COUPLINGS: [&str; 4] = [
        "{ mark: PC-1, kind: PVC splice coupling, nominal-size: 1 in, schedule: 40 }",
        "{ mark: PC-2, kind: PVC splice coupling, nominal-size: 1 1/4 in, schedule: 40 }",
        "{ mark: PC-3, kind: PVC splice coupling, nominal-size: 1 1/2 in, schedule: 40 }",
        "{ mark: PC-4, kind: PVC splice coupling, nominal-size: 2 in, schedule: 40 }",
    ];
    pub(crate) const HANK: &str = "{ mark: RH-1, kind: hank of rope, material: nylon, rope-make: soft braided, rope-diameter: 3/16 in, hank-thickness: 3 in }";
    pub(crate) const DOCUMENT: &str = "{ kind: careful-release document, edition: \"2019\", form: paper, kept: wheelhouse, state: aboard }";
    pub(crate) const PLACARD: &str = "{ kind: handling placard, state: posted, kept: wheelhouse }";
}

/// Tools that 635.21(c)(5)(i) took until 28 November 2024.
pub(crate) mod section_635 {
    pub(crate) const CUTTER: &str = "{ mark: LC-1, kind: long-handled line clipper, handle: 12 ft, cuts-monofilament: 2.1 mm, protected-blade: yes, blades-replaceable: yes, approved-model: yes }";
    pub(crate) const BLADES: &str =
        "{ mark: BL-1, kind: set of replacement blades, fits: [LC-1], all-cutting-surfaces: yes }";
    pub(crate) const INTERNAL: &str = "{ mark: DI-1, kind: long-handled dehooker for ingested hooks, handle: 12 ft, rod: 5/16 in, material: 316L, end-diameter: 1 7/8 in, end: pigtail, shields-point: yes, controls-leader: yes, no-unprotected-points: yes, sized-for-hooks: yes, approved-model: yes }";
    pub(crate) const EXTERNAL: &str = "{ mark: DE-1, kind: long-handled dehooker for external hooks, handle: 12 ft, rod: 5/16 in, material: 316L, end: j, blunt-end: yes, approved-model: yes }";
    pub(crate) const BOAT_HOOK: &str =
        "{ mark: BH-1, kind: boat hook, handle: 12 ft, end: boat hook, material: aluminium }";
    pub(crate) const DIP_NET: &str = "{ mark: DN-1, kind: dipnet, handle: 12 ft, hoop-inside: 31 in, bag-depth: 38 in, mesh: 1 1/2 in, rigid-handle: yes, carries: 100 lb, no-sharp-edges: yes }";
    pub(crate) const TIRE: &str = "{ mark: TI-1, kind: tire, no-steel-belts: yes }";
    pub(crate) const SHORT_INTERNAL: &str = "{ mark: SI-1, kind: short-handled dehooker for ingested hooks, handle: 20 in, shaft: 20 in, rod: 1/4 in, material: 316L, end-diameter: 1 5/16 in, shields-point: yes, no-unprotected-points: yes, bite-block-installed: yes, bite-block-plastic: yes, bite-block-inside: 3/4 in, bite-block-length: 10 in, bite-block-slide: 5 in, t-handle: 5 in, t-handle-thickness: 1 in, approved-model: yes }";
    pub(crate) const SHORT_EXTERNAL: &str = "{ mark: SE-1, kind: short-handled dehooker for external hooks, handle: 20 in, rod: 5/16 in, material: 316L, blunt-end: yes, t-handle: 5 in, t-handle-thickness: 1 in, approved-model: yes }";
    pub(crate) const PLIERS: &str =
        "{ mark: PL-1, kind: long-nose pliers, overall: 12 in, approved-model: yes }";
    pub(crate) const BOLT_CUTTERS: &str = "{ mark: BC-1, kind: bolt cutters, overall: 17 in, blade-length: 4 in, blade-width: 2 1/4 in, handle: 13 in, cuts-hook: 1/4 in, approved-model: yes }";
    pub(crate) const LINE_CUTTERS: &str = "{ mark: MC-1, kind: monofilament line cutters, overall: 7 1/2 in, blade-length: 1 3/4 in, blade-width: 5/8 in, approved-model: yes }";
    pub(crate) const BLOCK: &str = "{ mark: WB-1, kind: block of hard wood, length: 11 in, width: 1 in, thickness: 1 in, no-splinters: yes, smooth-edges: yes }";
    pub(crate) const TETHER: &str = "{ mark: CT-1, kind: control tether on a pole, pole: 12 ft, line-length: 18 ft, line-diameter: 1/2 in, line-lay: hard, sinks: yes, loop-size: 30 in, eyes: 3/4 in, cleat: 1/2 in, eye-behind-cleat: 7 in, last-eye: 3/4 in, tag-line: yes }";
    pub(crate) const DOCUMENT: &str =
        "{ kind: careful-release document, form: paper, kept: wheelhouse, state: posted }";
    pub(crate) const PLACARD: &str = "{ kind: handling placard, state: posted, kept: wheelhouse }";
    /// Owner and operator in one person, certified in January 2023.
    pub(crate) const PEOPLE: &str = "[{ name: A. Holder, roles: [owner, operator], certificates: [{ kind: workshop certificate, issued: 2023-01-10 }] }]";
}

/// A vessel with everything that Appendix F and the part 622 fisheries ask
/// above 4 ft.
pub(crate) fn equipped_for_part_622(freeboard: &str) -> Outfit {
    use appendix_f as f;
    vessel(freeboard)
        .with(&[f::CUTTER, f::BLADES, f::INTERNAL, f::EXTERNAL, f::BOAT_HOOK, f::DIP_NET, f::TIRE])
        .with(&[f::SHORT_INTERNAL, f::SHORT_EXTERNAL, f::PLIERS, f::BOLT_CUTTERS, f::LINE_CUTTERS])
        .with(&[f::BLOCK])
        .with(&f::BONES)
        .carrying(&[f::DOCUMENT, f::PLACARD])
}

/// A vessel with everything that 635.21 asked until 28 November 2024.
pub(crate) fn equipped_for_part_635(freeboard: &str) -> Outfit {
    use section_635 as s;
    vessel(freeboard)
        .with(&[s::CUTTER, s::BLADES, s::INTERNAL, s::EXTERNAL, s::BOAT_HOOK, s::DIP_NET, s::TIRE])
        .with(&[s::SHORT_INTERNAL, s::SHORT_EXTERNAL, s::PLIERS, s::BOLT_CUTTERS, s::LINE_CUTTERS])
        .with(&[s::BLOCK, s::TETHER])
        .with(&appendix_f::BONES)
        .carrying(&[s::DOCUMENT, s::PLACARD])
        .set("people", s::PEOPLE)
}
