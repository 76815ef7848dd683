//! Which of the shelf's screens is shown, as read from the hash behind `#/ink`.

use uuid::Uuid;

/// Among recipes, components and stock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InkRoute {
    /// What the day needs, open pots, recipes.
    Home,
    /// A new recipe.
    NewRecipe,
    /// A new recipe for the ink that a run names.
    NewRecipeForRun(Uuid),
    /// A recipe.
    Recipe(Uuid),
    /// Its name, colour and notes.
    EditRecipe(Uuid),
    /// Another revision of it.
    Revise(Uuid),
    /// How much to make of it again.
    MakeAgain(Uuid),
    /// What is left of each component, and what to buy.
    Stock,
    /// A new component.
    NewComponent,
    /// A component: what is left, and what happened to it.
    Component(Uuid),
    /// Its fields.
    EditComponent(Uuid),
    /// The scale.
    Scale,
}

impl InkRoute {
    /// The place of what follows in the hash.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            [] => Some(Self::Home),
            ["new"] => Some(Self::NewRecipe),
            ["new", run] => id(run).map(Self::NewRecipeForRun),
            ["stock"] => Some(Self::Stock),
            ["scale"] => Some(Self::Scale),
            ["component", "new"] => Some(Self::NewComponent),
            ["component", component] => id(component).map(Self::Component),
            ["component", component, "edit"] => id(component).map(Self::EditComponent),
            [recipe] => id(recipe).map(Self::Recipe),
            [recipe, "edit"] => id(recipe).map(Self::EditRecipe),
            [recipe, "revise"] => id(recipe).map(Self::Revise),
            [recipe, "again"] => id(recipe).map(Self::MakeAgain),
            _ => None,
        }
    }

    /// What follows in the hash: empty or with a leading slash.
    pub fn path(self) -> String {
        match self {
            Self::Home => String::new(),
            Self::NewRecipe => "/new".into(),
            Self::NewRecipeForRun(run) => format!("/new/{run}"),
            Self::Recipe(recipe) => format!("/{recipe}"),
            Self::EditRecipe(recipe) => format!("/{recipe}/edit"),
            Self::Revise(recipe) => format!("/{recipe}/revise"),
            Self::MakeAgain(recipe) => format!("/{recipe}/again"),
            Self::Stock => "/stock".into(),
            Self::NewComponent => "/component/new".into(),
            Self::Component(component) => format!("/component/{component}"),
            Self::EditComponent(component) => format!("/component/{component}/edit"),
            Self::Scale => "/scale".into(),
        }
    }
}
