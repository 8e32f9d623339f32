//! The page of each case, as a snapshot, with the total by hand.

use super::*;

/// Takes the snapshot and looks for the total, as it was worked out by hand.
#[track_caller]
fn page(name: &str, ran: &Ran, total: Option<&str>) {
    if let Some(total) = total {
        let first = ran.stdout.lines().next().unwrap();
        assert!(first.contains(&format!("; {total} USD, there by ")), "{}", ran.page());
    }
    insta::assert_snapshot!(name, ran.page());
}

#[test]
fn a_pack_of_four_is_cheaper_than_two_singles() {
    let heron =
        [("name: Marlow Tern", "name: Test Heron"), ("register: PA-104", "register: PA-105")];
    let heron = tern(&[&WITHOUT_PLIERS[..], &heron].concat());
    let files = [
        ("heron.yaml", heron.as_str()),
        ("tern.yaml", &tern(&WITHOUT_PLIERS)),
        ("shop.yaml", &shop(&[PLIERS, PLIERS_IN_FOURS])),
    ];
    // Two singles are 49.00. 40.00 and 10.00 for delivery, 5 % of it 2.50.
    page("a pack of four", &quote(&files, &[]), Some("52.50"));
}

#[test]
fn an_extension_does_instead_of_a_new_pole() {
    // 31.00 + 10.00, 5 % of it 2.05; a new one with its blades 150 + 20.
    let ran = one(&tern(&[]), &[CUTTER, BLADES, EXTENSION], &[]);
    page("an extension", &ran, Some("43.05"));
}

#[test]
fn one_long_dehooker_serves_two_requirements() {
    let both = "  - number: DI-7
    description: long dehooker for internal hooks, 7 ft
    tool:
      kind: long-handled dehooker for internal hooks
      handle: 7 ft
      rod: 1/4 in
      end-diameter: 1 3/4 in
      end: pigtail
      shields-point: yes
      controls-leader: yes
      no-unprotected-points: yes
      sized-for-hooks: yes
      conforms: [\"Appendix F, A.2\"]
    price: 120
";
    let outward = "  - number: DE-7
    description: long dehooker for external hooks, 7 ft
    tool:
      kind: long-handled dehooker for external hooks
      handle: 7 ft
      rod: 1/4 in
      end-diameter: 1 3/4 in
      end: j
      blunt-end: yes
      conforms: [\"Appendix F, A.3\"]
    price: 80
";
    let neither = [
        READY[0],
        ("mark: DI-1", "mark: DI-1\n    where: ashore"),
        ("mark: DE-1", "mark: DE-1\n    where: ashore"),
    ];
    // 120.00 + 10.00, 5 % of it 6.50.
    page("one long dehooker", &one(&tern(&neither), &[both, outward], &[]), Some("136.50"));
}

#[test]
fn a_delivery_charge_makes_one_supplier_cheaper_than_the_cheapest_lines_of_two() {
    let second = "  - number: BC-18
    description: bolt cutters, 18 in
    tool: { kind: bolt cutters, overall: 18 in, blade-length: 4 1/4 in, blade-width: 2 1/4 in, cuts-hook: 5/16 in }
    price: 60
";
    let wants =
        [&WITHOUT_PLIERS[..], &[("mark: BC-1", "mark: BC-1\n    condition: broken")]].concat();
    let near = shop(&[PLIERS, second]);
    let far = changed(
        &shop(&[PLIERS]),
        &[("Quay Locker\nport: Port Ansel", "Outer Islands Stores"), ("price: 24.50", "price: 20")],
    );
    let vessel = tern(&wants);
    let files =
        [("tern.yaml", vessel.as_str()), ("shop-far.yaml", &far), ("shop-near.yaml", &near)];
    // 24.50 + 60.00 + 10.00, 5 % of it 4.725, up to 4.73; from both
    // 20.00 + 60.00 + 20.00 and 5.00.
    page("one delivery", &quote(&files, &[]), Some("99.23"));
    // The far one has no bolt cutters: 20.00 + 10.00 and 1.50.
    page("one supplier compared", &quote(&files, &["--one-supplier"]), Some("99.23"));
}

#[test]
fn what_is_out_of_stock_is_told() {
    let none = format!("{PLIERS}    stock: 0\n");
    page("out of stock", &one(&tern(&WITHOUT_PLIERS), &[&none], &[]), None);
}

#[test]
fn what_comes_too_late_is_told() {
    let late = format!("{PLIERS}    lead: 9 days\n");
    page("late", &one(&tern(&WITHOUT_PLIERS), &[&late], &[]), None);
}

#[test]
fn what_falls_short_is_told_with_what_it_lacks() {
    let short = "  - number: LC-6
    description: line cutter on a pole of 6 ft
    tool: { kind: long-handled line cutter, handle: 6 ft, cuts-monofilament: 2.1 mm, protected-blade: yes, blades-replaceable: yes }
    price: 90
";
    page("too short", &one(&tern(&[]), &[short], &[]), None);
}

#[test]
fn a_vessel_that_is_ready_needs_nothing() {
    page("nothing needed", &one(&tern(&READY), &[], &["--explain"]), None);
}

#[test]
fn a_set_comes_whole() {
    let gags = "  - number: GA-3
    description: canine mouth gags of 5, 6 and 7 in
    tools:
      - { kind: canine mouth gag, nominal-size: 5 in, material: stainless, conforms: [\"Appendix F, A.12\"] }
      - { kind: canine mouth gag, nominal-size: 6 in, material: stainless, conforms: [\"Appendix F, A.12\"] }
      - { kind: canine mouth gag, nominal-size: 7 in, material: stainless, conforms: [\"Appendix F, A.12\"] }
    price: 62
";
    // 62.00 + 10.00, 5 % of it 3.60.
    let one_bone = [READY[0], ("mark: CB-2", "mark: CB-2\n    condition: broken")];
    page("a set", &one(&tern(&one_bone), &[gags], &[]), Some("75.60"));
}

#[test]
fn a_service_mends_what_is_aboard() {
    let service = "  - number: SV-1
    description: new blades ground and fitted
    service: { kinds: [bolt cutters], does: [repair] }
    price: 28
";
    let broken = [READY[0], ("mark: BC-1", "mark: BC-1\n    condition: broken")];
    // 28.00 + 10.00, 5 % of it 1.90.
    page("a service", &one(&tern(&broken), &[service], &[]), Some("39.90"));
}

#[test]
fn why_this_basket_is_told_in_sentences() {
    let wants = [WITHOUT_PLIERS[1]];
    // 31.00 + 24.50 + 10.00 = 65.50, 5 % of it 3.275, up to 3.28.
    // Without the extension 150 + 20 + 24.50 + 10 = 204.50 and 10.23 (10.225):
    // 214.73. Without asking for a cutter, and for its blades, 24.50 + 10 and
    // 1.73 (1.725): 36.23.
    let ran = one(&tern(&wants), &[CUTTER, BLADES, EXTENSION, PLIERS], &["--explain"]);
    page("explained", &ran, Some("68.78"));
    let text = flat(&ran.stdout);
    assert!(
        text.contains("Without it the order would come to 214.73 USD, 145.95 USD more."),
        "{text}"
    );
    assert!(text.contains("the order would come to 36.23 USD, 32.55 USD less."), "{text}");
}

#[test]
fn goods_do_not_stand_in_for_a_certificate() {
    let petrel = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let petrel = changed(
        &petrel,
        &[("issued: 2021-03-08, expires: 2024-03-07", "issued: 2020-03-08, expires: 2023-03-07")],
    );
    let ran = one(&petrel, &[], &["--ordered", "2024-02-01"]);
    page("no certificate", &ran, None);
}

#[test]
fn an_item_that_lifts_the_order_to_free_delivery_says_so() {
    let filler = "  - number: TI-2
    description: passenger tire
    tool: { kind: tire, no-steel-belts: yes, sized-for-turtles: yes }
    price: 8
";
    let shop = changed(
        &shop(&[PLIERS, filler]),
        &[("delivery: 10", "delivery: { charge: 10, free from: 30 }")],
    );
    // 24.50 + 8.00, 5 % of it 1.625, up to 1.63; without the tire 24.50 +
    // 10.00 and 1.73.
    let vessel = tern(&WITHOUT_PLIERS);
    let ran = quote(&[("tern.yaml", &vessel), ("shop.yaml", &shop)], &["--explain"]);
    page("free delivery", &ran, Some("34.13"));
}

#[test]
fn packs_of_which_a_least_number_is_sold_say_so() {
    let twos = format!("{PLIERS}    least order: 2\n");
    // 2 x 24.50 + 10.00 = 59.00, 5 % of it 2.95.
    page("least order", &one(&tern(&WITHOUT_PLIERS), &[&twos], &[]), Some("61.95"));
}

#[test]
fn what_measuring_could_save_is_told() {
    let unmeasured = [("    handle: 6 ft 4 in\n", "")];
    // Whatever its handle is, nobody may rely on it: 150 + 20 + 10 = 180.00,
    // 5 % of it 9.00.
    let ran = one(&tern(&unmeasured), &[CUTTER, BLADES], &[]);
    page("measure first", &ran, Some("189.00"));
}

#[test]
fn several_suppliers_come_at_several_times_for_some_of_a_lot() {
    let mend = "  - number: SV-1
    description: new blades ground and fitted
    service: { kinds: [bolt cutters], does: [repair] }
    price: 28
  - number: EX-4
    description: pole extension, 1/4 in
    lengthens: { kinds: [long-handled line cutter], by: 1/4 in, per tool: 2 }
    price: 31
";
    let far = changed(
        &shop(&[PLIERS_IN_FOURS]),
        &[
            ("Quay Locker\nport: Port Ansel", "Outer Islands Stores"),
            ("lead: 2 days", "lead: 4 days"),
        ],
    );
    let vessel = tern(&[
        ("handle: 6 ft 4 in", "handle: 6 ft 4 in\n    count: 3"),
        ("mark: BC-1", "mark: BC-1\n    count: 2\n    broken: 2"),
        WITHOUT_PLIERS[1],
    ]);
    let files =
        [("tern.yaml", vessel.as_str()), ("shop-a.yaml", &shop(&[mend])), ("shop-b.yaml", &far)];
    // 28.00 + 2 x 31.00 + 10.00 and 5.00; 40.00 + 10.00 and 2.50.
    page("several suppliers", &quote(&files, &[]), Some("157.50"));
}
