//! Weaves all changes into one copy of the sources, each behind a switch that
//! is set when the program runs: `if crate::mutant(7u32) { a - b } else { a + b }`.

use crate::mutant::Mutant;
use proc_macro2::LineColumn;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::{fs, io};
use syn::spanned::Spanned;
use syn::visit_mut::{self, VisitMut};
use syn::{Arm, Block, Expr, ExprStruct, ReturnType, Type, parse_quote, parse_str};

/// The function that every switch asks; it joins the library.
const SWITCH: &str = include_str!("switch.rs");

/// Weaves the changes into the package at `tree`, without those left out.
/// Returns the numbers that were woven in.
///
/// # Errors
/// Where a file cannot be read, parsed or written.
pub fn weave(
    tree: &Path,
    mutants: &[Mutant],
    without: &BTreeSet<u32>,
) -> io::Result<BTreeSet<u32>> {
    let mut files: BTreeMap<&str, Vec<&Mutant>> = BTreeMap::new();
    for mutant in mutants.iter().filter(|m| !without.contains(&m.number)) {
        files.entry(&mutant.file).or_default().push(mutant);
    }
    let mut woven = BTreeSet::new();
    for (file, changes) in files {
        let path = tree.join(file);
        let (text, mut numbers) = into(&fs::read_to_string(&path)?, &changes)
            .map_err(|error| io::Error::other(format!("{file}: {error}")))?;
        fs::write(&path, text)?;
        woven.append(&mut numbers);
    }
    let library = tree.join("src/lib.rs");
    fs::write(&library, fs::read_to_string(&library)? + "\n" + SWITCH)?;
    Ok(woven)
}

/// One file with its changes woven in, and their numbers.
pub fn into(text: &str, changes: &[&Mutant]) -> syn::Result<(String, BTreeSet<u32>)> {
    let mut file = syn::parse_file(text)?;
    let mut at: BTreeMap<_, Vec<&Mutant>> = BTreeMap::new();
    for change in changes {
        at.entry(change.at).or_default().push(change);
    }
    let mut weaver = Weaver { at, woven: BTreeSet::new() };
    // Bodies first: what is put into them stands at no place of the text.
    Bodies(&mut weaver).visit_file_mut(&mut file);
    weaver.visit_file_mut(&mut file);
    Ok((prettyplease::unparse(&file), weaver.woven))
}

struct Weaver<'a> {
    at: BTreeMap<(usize, usize), Vec<&'a Mutant>>,
    woven: BTreeSet<u32>,
}

impl Weaver<'_> {
    /// The changes of this genre that begin here, with what they put there.
    fn take(&mut self, genre: &str, at: LineColumn) -> Vec<(u32, String)> {
        let here = self.at.get(&(at.line, at.column + 1)).into_iter().flatten();
        let found: Vec<_> = here
            .filter(|mutant| mutant.genre == genre)
            .map(|mutant| (mutant.number, mutant.replacement.clone()))
            .collect();
        self.woven.extend(found.iter().map(|(number, _)| number));
        found
    }

    fn fields(&mut self, whole: &ExprStruct, starts: &[LineColumn]) -> Expr {
        let mut new = Expr::Struct(whole.clone());
        for (index, start) in starts.iter().enumerate() {
            for (number, _) in self.take("StructField", *start) {
                let mut less = whole.clone();
                let others = whole.fields.iter().enumerate().filter(|(i, _)| *i != index);
                less.fields = others.map(|(_, field)| field.clone()).collect();
                if less.rest.is_some() && !less.fields.is_empty() {
                    less.fields.push_punct(Default::default());
                }
                new = parse_quote! { (if crate::mutant(#number) { #less } else { #new }) };
            }
        }
        new
    }
}

impl VisitMut for Weaver<'_> {
    fn visit_expr_mut(&mut self, expr: &mut Expr) {
        // Places are asked for before what stands within is changed.
        let operator = match expr {
            Expr::Binary(binary) => Some(binary.op.span().start()),
            Expr::Unary(unary) => Some(unary.op.span().start()),
            _ => None,
        };
        let fields: Vec<LineColumn> = match expr {
            Expr::Struct(whole) => whole.fields.iter().map(|f| f.span().start()).collect(),
            _ => Vec::new(),
        };
        visit_mut::visit_expr_mut(self, expr);
        match expr {
            Expr::Binary(binary) if !has_let(&binary.left) && !has_let(&binary.right) => {
                let found = self.take("BinaryOperator", operator.expect("an operator"));
                if found.is_empty() {
                    return;
                }
                let (left, right) = (whole(&binary.left), whole(&binary.right));
                let op = binary.op;
                let mut new: Expr = parse_quote! { { #left #op #right } };
                for (number, op) in found {
                    let op: syn::BinOp = parse_str(&op).expect("an operator");
                    new = parse_quote! { if crate::mutant(#number) { #left #op #right } else #new };
                }
                *expr = parse_quote! { (#new) };
            }
            Expr::Unary(unary) => {
                let found = self.take("UnaryOperator", operator.expect("an operator"));
                if let Some((number, _)) = found.first() {
                    let (inner, old) = (unary.expr.clone(), unary.clone());
                    *expr = parse_quote! { (if crate::mutant(#number) { #inner } else { #old }) };
                }
            }
            Expr::Struct(whole) => *expr = self.fields(&whole.clone(), &fields),
            _ => {}
        }
    }

    fn visit_arm_mut(&mut self, arm: &mut Arm) {
        let at = arm.span().start();
        let guard_at = arm.guard.as_ref().map(|(_, guard)| guard.span().start());
        visit_mut::visit_arm_mut(self, arm);
        if let (Some(at), Some((_, guard))) = (guard_at, &mut arm.guard)
            && !has_let(guard)
        {
            for (number, value) in self.take("MatchArmGuard", at) {
                let value: Expr = parse_str(&value).expect("a value");
                **guard = parse_quote! { (if crate::mutant(#number) { #value } else { #guard }) };
            }
        }
        for (number, _) in self.take("MatchArm", at) {
            let guard: Expr = match &arm.guard {
                Some((_, guard)) => {
                    let guard = whole(guard);
                    parse_quote! { !crate::mutant(#number) && #guard }
                }
                None => parse_quote! { !crate::mutant(#number) },
            };
            arm.guard = Some((Default::default(), Box::new(guard)));
        }
    }
}

/// Puts the values in that a function is to return in place of what it does.
struct Bodies<'a, 'b>(&'a mut Weaver<'b>);

impl Bodies<'_, '_> {
    fn body(&mut self, returned: &ReturnType, block: &mut Block) {
        let Some(first) = block.stmts.first() else { return };
        if let ReturnType::Type(_, kind) = returned
            && matches!(**kind, Type::ImplTrait(_))
        {
            // It can return one type alone.
            return;
        }
        let mut new = Vec::new();
        for (number, value) in self.0.take("FnValue", first.span().start()) {
            match parse_str::<Expr>(&value) {
                Ok(value) => new.push(parse_quote! {
                    if crate::mutant(#number) { return #value; }
                }),
                Err(_) => {
                    self.0.woven.remove(&number);
                }
            }
        }
        new.append(&mut block.stmts);
        block.stmts = new;
    }
}

impl VisitMut for Bodies<'_, '_> {
    fn visit_item_fn_mut(&mut self, function: &mut syn::ItemFn) {
        self.body(&function.sig.output, &mut function.block);
        visit_mut::visit_item_fn_mut(self, function);
    }
    fn visit_impl_item_fn_mut(&mut self, function: &mut syn::ImplItemFn) {
        self.body(&function.sig.output, &mut function.block);
        visit_mut::visit_impl_item_fn_mut(self, function);
    }
    fn visit_trait_item_fn_mut(&mut self, function: &mut syn::TraitItemFn) {
        if let Some(block) = &mut function.default {
            self.body(&function.sig.output, block);
        }
        visit_mut::visit_trait_item_fn_mut(self, function);
    }
}

/// Whether a `let` of a chain stands in it: no value to be switched.
fn has_let(expr: &Expr) -> bool {
    match expr {
        Expr::Let(_) => true,
        Expr::Binary(binary) => has_let(&binary.left) || has_let(&binary.right),
        Expr::Paren(paren) => has_let(&paren.expr),
        _ => false,
    }
}

/// The expression in brackets, where another operator beside it could part it.
fn whole(expr: &Expr) -> Expr {
    match expr {
        Expr::Path(_)
        | Expr::Lit(_)
        | Expr::Paren(_)
        | Expr::MethodCall(_)
        | Expr::Call(_)
        | Expr::Field(_) => expr.clone(),
        other => parse_quote! { (#other) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "fn f(a: i32, b: i32) -> bool {\n    match a {\n        0 if b > 1 => !g(b),\n        \
                        _ => a + b < 3 && h(),\n    }\n}\n";

    fn change(number: u32, genre: &str, at: (usize, usize), replacement: &str) -> Mutant {
        let (name, file) = (String::new(), String::new());
        Mutant { number, name, file, genre: genre.into(), replacement: replacement.into(), at }
    }

    #[test]
    fn every_genre_finds_its_place() {
        let changes = [
            change(1, "FnValue", (2, 5), "true"),
            change(2, "MatchArm", (3, 9), ""),
            change(3, "MatchArmGuard", (3, 14), "false"),
            change(4, "UnaryOperator", (3, 23), ""),
            change(5, "BinaryOperator", (4, 16), "-"),
            change(6, "BinaryOperator", (4, 20), "=="),
            change(7, "BinaryOperator", (4, 24), "||"),
        ];
        let (text, woven) = into(TEXT, &changes.iter().collect::<Vec<_>>()).unwrap();
        assert_eq!(woven.into_iter().collect::<Vec<_>>(), [1, 2, 3, 4, 5, 6, 7], "{text}");
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for part in [
            "if crate::mutant(1u32) { return true; }",
            "0 if !crate::mutant(2u32) && (if crate::mutant(3u32) { false } else { b > 1 })",
            "(if crate::mutant(4u32) { g(b) } else { !g(b) })",
            "if crate::mutant(5u32) { a - b } else { a + b }",
        ] {
            assert!(flat.contains(part), "{part}: {flat}");
        }
    }

    #[test]
    fn a_field_is_left_to_the_rest() {
        let text = "fn f(a: At) -> At {\n    At { x: 1, y: 2, ..a }\n}\n";
        let changes =
            [change(1, "StructField", (2, 10), ""), change(2, "StructField", (2, 16), "")];
        let (text, woven) = into(text, &changes.iter().collect::<Vec<_>>()).unwrap();
        assert_eq!(woven.len(), 2);
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for part in ["if crate::mutant(1u32) { At { y: 2, ..a } }", "{ At { x: 1, ..a } }"] {
            assert!(flat.contains(part), "{part}: {flat}");
        }
    }

    #[test]
    fn a_change_at_another_place_is_not_woven_in() {
        let other = change(1, "BinaryOperator", (4, 17), "-");
        let (_, woven) = into(TEXT, &[&other]).unwrap();
        assert!(woven.is_empty());
    }
}
