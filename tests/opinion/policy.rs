//! Asks the policy, and remembers what it said to the same question.

use crate::rules::{Rules, Words};
use regorus::{Engine, Value};
use serde_json::{Value as Json, json};
use std::collections::HashMap;
use std::rc::Rc;

/// The policy with the profiles as its data.
pub(crate) struct Policy {
    engine: Engine,
    said: HashMap<String, Rc<Json>>,
    /// How often it had to think.
    pub(crate) asked: usize,
}

impl Policy {
    /// The policy over these profiles.
    pub(crate) fn new(words: &Words, profiles: &[Rules]) -> Self {
        let mut engine = Engine::new();
        engine
            .add_policy("policy.rego".to_owned(), include_str!("policy.rego").to_owned())
            .unwrap();
        let rules: serde_json::Map<String, Json> =
            profiles.iter().map(|rules| (rules.id.clone(), rules.data.clone())).collect();
        let data = json!({ "rules": rules, "words": words.data }).to_string();
        engine.add_data(Value::from_json_str(&data).unwrap()).unwrap();
        Self { engine, said: HashMap::new(), asked: 0 }
    }

    /// The value of a rule of the policy for an input.
    pub(crate) fn ask(&mut self, rule: &str, input: &Json) -> Rc<Json> {
        let question = format!("{rule} {input}");
        if let Some(said) = self.said.get(&question) {
            return Rc::clone(said);
        }
        self.asked += 1;
        self.engine.set_input(Value::from_json_str(&input.to_string()).unwrap());
        let value = self.engine.eval_rule(format!("data.opinion.{rule}"));
        let value = value.unwrap_or_else(|e| panic!("{e}\n{rule}\n{input:#}"));
        assert_ne!(value, Value::Undefined, "undecided: {rule} {input:#}");
        let said = Rc::new(serde_json::from_str(&value.to_json_str().unwrap()).unwrap());
        self.said.insert(question, Rc::clone(&said));
        said
    }
}
