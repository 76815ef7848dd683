//! Routes of recipes, components and stock: the hash after `#/ink`.

use uuid::Uuid;

/// A page of recipes, components or stock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InkRoute {
    /// The overview: what the coming runs need, open pots, recipes.
    Home,
    /// A new recipe.
    NewRecipe,
    /// A new recipe for the ink that a run names.
    NewRecipeForRun(Uuid),
    /// A recipe.
    Recipe(Uuid),
    /// The recipe's name, colour and notes.
    EditRecipe(Uuid),
    /// A new revision of a recipe or from a revision.
    Revise(Uuid),
    /// Making a recipe again in another size.
    MakeAgain(Uuid),
    /// The stock of each component, and what to buy.
    Stock,
    /// A new component.
    NewComponent,
    /// A component: its stock and history.
    Component(Uuid),
    /// The fields of a component.
    EditComponent(Uuid),
    /// The scale's settings.
    Scale,
}

impl InkRoute {
    /// Parses the segments after the area's prefix; `None` if they name no page.
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

    /// The hash after the area's prefix: empty, or with a leading slash.
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
