//! Invented names: vessels, people, ports.

pub(crate) const FIRST: [&str; 32] = [
    "Amber", "Ashen", "Brindle", "Copper", "Dappled", "Distant", "Dun", "Ember", "Fallow", "Far",
    "Gilded", "Grey", "Hazel", "Hollow", "Idle", "Ivory", "Late", "Little", "Long", "Marled",
    "Night", "Ochre", "Pale", "Quiet", "Rusty", "Salt", "Slate", "Sudden", "Thistle", "Tawny",
    "Vesper", "Winter",
];

pub(crate) const SECOND: [&str; 32] = [
    "Avocet",
    "Curlew",
    "Dotterel",
    "Dunlin",
    "Fulmar",
    "Gannet",
    "Godwit",
    "Heron",
    "Kestrel",
    "Knot",
    "Lantern",
    "Lapwing",
    "Meridian",
    "Noddy",
    "Osprey",
    "Petrel",
    "Pipit",
    "Plover",
    "Pomelo",
    "Quarrel",
    "Quill",
    "Ruff",
    "Sandling",
    "Shearwater",
    "Skua",
    "Smew",
    "Sorrel",
    "Tern",
    "Turnstone",
    "Whimbrel",
    "Wigeon",
    "Wrack",
];

pub(crate) const FAMILY: [&str; 24] = [
    "Abernatch",
    "Brimlow",
    "Carrowick",
    "Dunsalter",
    "Eskerby",
    "Fennimarsh",
    "Garrowel",
    "Hathermoor",
    "Inchlade",
    "Jossamy",
    "Kavanough",
    "Lurrigan",
    "Mettleby",
    "Norringale",
    "Ostrander-Vey",
    "Pendrake",
    "Quandle",
    "Rookwith",
    "Stavelock",
    "Tavrell",
    "Undermere",
    "Varrowby",
    "Wendrake",
    "Yarrowlea",
];

pub(crate) const PORTS: [&str; 6] =
    ["Port Ansel", "Quillmouth", "Tarrow Bight", "Dunmarrow Quay", "Saltern Cove", "Isle Verrick"];

pub(crate) const REMARKS: [&str; 6] = [
    "handle rewound in spring",
    "label worn off",
    "spare in the forepeak",
    "bought last season",
    "kept out of the sun",
    "checked at the dock",
];

pub(crate) const STOWED: [&str; 5] =
    ["rack under the port rail", "tool chest", "wheelhouse roof", "aft deck", "starboard locker"];
