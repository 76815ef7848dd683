//! Messages: what the terms of the trade and of colour science mean, and the labels of the drawings beside them.
//!
//! A text has no figure without a published source, which the comment on the term names. The others are common practice,
//! no source.

use super::locale::localized_str;
use super::messages::messages;
use lastpull_core::collections::sort_by_key;

/// Declares the terms: `Term { "English name", "Nombre", "What it means in two sentences.", "Qué significa." }`.
macro_rules! terms {
    ($($(#[$doc:meta])* $term:ident { $en:literal, $es:literal, $en_text:literal, $es_text:literal })*) => {
        /// A term that the app explains.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Term { $($(#[$doc])* $term,)* }

        impl Term {
            const ALL: &[Self] = &[$(Self::$term),*];

            /// The term as it is written on its own.
            pub fn name(self) -> &'static str {
                match self { $(Self::$term => localized_str(concat!($en, "\n", $es)),)* }
            }

            /// What it means.
            pub fn text(self) -> &'static str {
                match self { $(Self::$term => localized_str(concat!($en_text, "\n", $es_text)),)* }
            }
        }
    };
}

terms! {
    /// Source: `shared/tests/data/README.md`, `exposure_step_guide.csv`.
    StepScale {
        "21-step scale", "Escala de 21 pasos",
        "A strip of film with 21 steps from clear to dark, exposed along with the stencil; also called step guide or step wedge. The last step that is still solid after washout shows whether the exposure was too short or too long.",
        "Tira de película con 21 pasos, de claro a oscuro, que se expone junto con el esténcil; también se le dice guía o cuña de pasos. El último paso que sigue sólido después de revelar dice si faltó o sobró exposición."
    }
    /// What was mixed in one container: `pot` in the code.
    Batch {
        "Batch", "Mezcla",
        "Ink mixed in one container. The app keeps every gram that goes in, so a batch can be topped up, corrected and saved as a recipe.",
        "Tinta mezclada en un recipiente. La app guarda cada gramo que entra, y así una mezcla se puede rellenar, corregir y guardar como receta."
    }
    /// Source: ISO 105-J03; AATCC TM173, which gives 2:1 for acceptability.
    Cmc {
        "CMC(2:1)", "CMC(2:1)",
        "A color difference formula made for textiles: like Delta E, the larger the number, the larger the difference. 2:1 is the setting for judging what is acceptable: a difference in lightness counts half.",
        "Fórmula de diferencia de color hecha para textiles: como Delta E, cuanto mayor el número, mayor la diferencia. 2:1 es el ajuste para juzgar lo aceptable: una diferencia de claridad cuenta la mitad."
    }
    /// The coats of emulsion on a screen.
    Coats {
        "Coats", "Capas de emulsión",
        "Passes of the scoop coater, counted for each side of the mesh. More coats make a thicker stencil, which needs a longer exposure.",
        "Pasadas de la emulsionadora, contadas en cada lado de la malla. Más capas dan un esténcil más grueso, que pide más exposición."
    }
    /// Source: `shared/tests/data/README.md`, `exposure_calculator_5col.csv`.
    ColumnFilm {
        "Column film", "Película de columnas",
        "A film whose columns let through different shares of the light, so one exposure tests several times at once. The best column is the one with the least light whose color is the same as with more light, and it has all its detail; if the color never changes, go by detail and hardness.",
        "Película cuyas columnas dejan pasar distintas partes de la luz: una sola exposición prueba varios tiempos. La mejor columna es la de menos luz con el mismo color que las de más luz, y con todo el detalle; si el color no cambia, guíate por el detalle y la dureza."
    }
    /// What recipes are made of.
    Component {
        "Component", "Componente",
        "What inks are mixed from: a base, a pigment or an additive, each in its own bucket. Stock, price and color data are kept for each component.",
        "Con lo que se mezclan las tintas: una base, un pigmento o un aditivo, cada uno en su cubeta. Existencias, precio y datos de color se guardan por componente."
    }
    /// Source: ISO 6504-1; ASTM D2805.
    ContrastRatio {
        "Contrast ratio", "Relación de contraste",
        "How well a film of ink hides what is under it: the light it sends back over black, as a percent of what it sends back over white. At 100% nothing shows through.",
        "Qué tanto tapa una capa de tinta: la luz que devuelve sobre negro, como porcentaje de la que devuelve sobre blanco. Con 100 % no se trasluce nada."
    }
    /// Common practice, no source.
    Cure {
        "Cure", "Curado",
        "The heat that makes a print permanent: all of the ink must reach its cure temperature, for as long as its data sheet says. A print can feel dry and not be cured.",
        "El calor que fija el estampado: toda la tinta debe llegar a su temperatura de curado, durante el tiempo que pide su ficha. Un estampado puede sentirse seco y no estar curado."
    }
    /// Source for what an SDS is: OSHA, 29 CFR 1910.1200(g).
    DataSheets {
        "Data sheet, SDS", "Ficha técnica, SDS",
        "The data sheet says how to use a product: temperatures, times, amounts. The safety data sheet (SDS) says how it can harm you, what to wear and what to do after contact; ask the supplier for both.",
        "La ficha técnica dice cómo usar un producto: temperaturas, tiempos, cantidades. La hoja de seguridad (SDS) dice qué daño puede hacer, con qué protegerse y qué hacer tras un contacto; pide las dos al proveedor."
    }
    /// Source: ISO/CIE 11664-6, CIEDE2000.
    DeltaE {
        "Delta E (ΔE)", "Delta E (ΔE)",
        "The size of a color difference as one number: the larger, the easier to see, and 0 is no difference. ΔE₀₀ is the 2000 formula of the CIE, the International Commission on Illumination.",
        "El tamaño de una diferencia de color en un número: cuanto mayor, más se nota, y 0 es ninguna diferencia. ΔE₀₀ es la fórmula de 2000 de la CIE, la Comisión Internacional de la Iluminación."
    }
    /// The reclaim bath.
    DipTank {
        "Dip tank, charge", "Tanque de inmersión, carga",
        "A tank of chemistry that strips stencils off screens; one filling of it is a charge. Screens take longer as the charge wears out, and the app estimates when to recharge.",
        "Tanque con un producto que quita el esténcil de las pantallas; cada llenado es una carga. Las pantallas tardan más conforme la carga se gasta, y la app estima cuándo recargar."
    }
    /// Common practice, no source.
    Drawdown {
        "Drawdown", "Extendido",
        "A smooth film of ink on a card, spread with a bar or printed, to see and measure its color. With drawdowns of each component the app can calculate mixes.",
        "Capa lisa de tinta sobre una cartulina, hecha con una barra o impresa, para ver y medir su color. Con extendidos de cada componente la app puede calcular mezclas."
    }
    /// The error of a dryer's setting at the print.
    DryerOffset {
        "Dryer offset", "Diferencia del horno",
        "How much hotter or cooler the print gets than the dryer is set. The display shows the air; measure at the print, with a probe or a temperature strip.",
        "Cuánto más o menos se calienta el estampado que lo ajustado en el horno. El indicador muestra el aire; mide en el estampado, con sonda o tira de temperatura."
    }
    /// Source: the definition of speed.
    DwellTime {
        "Dwell time", "Tiempo en el horno",
        "How long a garment is under the heat of the dryer: the heated length divided by the belt speed. It includes the time in which the ink only heats up and dries.",
        "Cuánto pasa una prenda bajo el calor del horno: el largo con calor dividido entre la velocidad de la banda. Incluye el rato en que la tinta solo se calienta y se seca."
    }
    /// Common practice, no source.
    DyedMesh {
        "Dyed mesh", "Malla teñida",
        "Yellow or amber mesh, which keeps light from spreading sideways during exposure. Fine detail comes out sharper, and the exposure takes longer than on white mesh.",
        "Malla amarilla o ámbar, que evita que la luz se disperse hacia los lados al exponer. El detalle fino sale más nítido, y la exposición tarda más que con malla blanca."
    }
    /// Source: `shared/tests/data/README.md`, `cure_common_practice.csv`, S5.10 and S5.11.
    DyeMigration {
        "Dye migration", "Migración del tinte",
        "Heat frees the dye in polyester, and it moves up into the ink: white on red turns pink. It may not show until days later.",
        "El calor libera el tinte del poliéster, que sube a la tinta: un blanco sobre rojo se vuelve rosa. A veces se nota días después."
    }
    /// Common practice, no source.
    EmulsionSolids {
        "Emulsion solids", "Sólidos de la emulsión",
        "The share of the emulsion that is left when it has dried, in percent. With more solids, fewer coats give the same thickness.",
        "La parte de la emulsión que queda cuando se seca, en porcentaje. Con más sólidos, menos capas dan el mismo espesor."
    }
    /// Common practice, no source.
    EmulsionType {
        "Emulsion type", "Tipo de emulsión",
        "Diazo, photopolymer, or dual-cure, which combines the two; the label or data sheet says which. They need different exposures, and damp air affects each differently.",
        "Diazo, fotopolímero o doble curado, que combina los dos; lo dice la etiqueta o la ficha. Piden exposiciones distintas, y el aire húmedo afecta distinto a cada uno."
    }
    /// Common practice, no source.
    Flash {
        "Flash", "Flash",
        "A short heat on the press that sets a layer of ink just enough to print on it. It does not cure the print; the dryer does.",
        "Calor breve en la prensa que fija una capa de tinta lo justo para imprimir encima. No cura el estampado; eso lo hace el horno."
    }
    /// What a forecast says: `RunFit` in the core.
    Forecast {
        "Makes it, tight, late", "Llega, justo, tarde",
        "What the app expects of a run, from the pace counted so far: whether it is done by its due time and before closing. “Makes it” and “late” are said only when nearly certain; “tight” means it can go either way.",
        "Lo que la app espera de un tiraje, según el ritmo contado: si termina antes de su entrega y del cierre. «Llega» y «tarde» se dicen solo cuando es casi seguro; «justo» quiere decir que puede pasar o no."
    }
    /// Common practice, no source.
    GhostImage {
        "Ghost image", "Imagen fantasma",
        "An old image that stays in the mesh after reclaiming: a stain, or leftover ink or stencil. It can hold back light at the next exposure, or show in a print.",
        "Imagen vieja que queda en la malla después de recuperarla: una mancha, o restos de tinta o esténcil. Puede frenar la luz en la siguiente exposición o verse en un estampado."
    }
    /// Source: ISO 105-A02 and 105-A03.
    GrayScale {
        "Gray scale", "Escala de grises",
        "A card with pairs of grays, from equal to far apart, for judging how much a print faded or stained a cloth. Grade 5 is no change, grade 1 the most.",
        "Tarjeta con pares de grises, de iguales a muy distintos, para juzgar cuánto se deslavó un estampado o manchó un paño. El grado 5 es ningún cambio y el 1, el mayor."
    }
    /// Source: NWS Weather Prediction Center, "The Heat Index Equation".
    HeatIndex {
        "Heat index", "Índice de calor",
        "How hot the air feels in the shade, from temperature and humidity. It leaves out the heat that comes straight from a dryer or flash: near them it feels hotter.",
        "Qué tan caliente se siente el aire a la sombra, según temperatura y humedad. No cuenta el calor que llega directo del horno o del flash: cerca de ellos se siente más."
    }
    /// The time on an ink's data sheet.
    HoldTime {
        "Hold time", "Tiempo mínimo",
        "How long the ink must stay at its cure temperature or above, from its data sheet. The dwell time has to be longer, because the ink must heat up first.",
        "Cuánto debe quedar la tinta a su temperatura de curado o más, según su ficha. El tiempo en el horno tiene que ser mayor, porque antes la tinta se calienta."
    }
    /// The share of a mesh's ink that prints.
    InkTransfer {
        "Ink transfer", "Traspaso de tinta",
        "The ink that a print takes, as a percent of what the mesh holds. To find yours, weigh a batch before and after a run.",
        "La tinta que toma un estampado, como porcentaje de la que carga la malla. Para saber la tuya, pesa una mezcla antes y después de un tiraje."
    }
    /// Source: `shared/tests/data/README.md`, `mesh_table_and_residuals.csv`.
    InkVolume {
        "Theoretical ink volume", "Volumen teórico de tinta",
        "The ink that fits in the openings of a square meter of mesh: open area times mesh thickness. It is for comparing meshes; what a print really uses differs.",
        "La tinta que cabe en los huecos de un metro cuadrado de malla: área abierta por espesor. Sirve para comparar mallas; lo que gasta un estampado varía."
    }
    /// Source: ISO/CIE 11664-4, CIE 1976 L*a*b*; ISO/CIE 11664-2, illuminant D65; the 2° observer of ISO/CIE 11664-1.
    Lab {
        "L*a*b*", "L*a*b*",
        "A color as three numbers: L* from black (0) to white (100), a* from green to red, b* from blue to yellow. Set the instrument to D65 and 2°; other settings give other numbers.",
        "Un color en tres números: L* de negro (0) a blanco (100), a* de verde a rojo, b* de azul a amarillo. Ajusta el instrumento a D65 y 2°; con otro ajuste salen otros números."
    }
    /// Common practice, no source.
    LetDown {
        "Let-down", "Rebajado",
        "A strong color thinned with white or clear base. It shows how strong the color is and which way it leans, which can't be seen when it is straight.",
        "Un color fuerte mezclado con blanco o con base transparente. Así se ve qué tan fuerte es y hacia qué tono tira, lo que puro no se nota."
    }
    /// Common practice, no source.
    MeshCount {
        "Mesh count", "Número de hilos",
        "How many threads the mesh has per inch or per centimeter. A higher count gives finer detail and lays down less ink.",
        "Cuántos hilos tiene la malla por pulgada o por centímetro. Con más hilos, el detalle es más fino y se deposita menos tinta."
    }
    /// Source: ASTM E11, where an opening is measured between parallel wires.
    MeshOpening {
        "Mesh opening", "Luz de malla",
        "The width of one hole in the mesh, from thread to thread, in micrometers (µm). The data sheet has it; thread diameter alone doesn't give it, because woven threads flatten.",
        "El ancho de un hueco de la malla, de hilo a hilo, en micrómetros (µm). Está en la ficha; el diámetro del hilo no basta, porque al tejerse se aplasta."
    }
    /// Common practice, no source.
    MeshTension {
        "Mesh tension", "Tensión de la malla",
        "How tight the mesh is, in newtons per centimeter (N/cm), read with a tension meter. A slack mesh follows the squeegee: prints smear, and colors don't line up.",
        "Qué tan tensa está la malla, en newtons por centímetro (N/cm), según un tensiómetro. Una malla floja sigue al rasero: el estampado se corre y los colores no coinciden."
    }
    /// A piece that is printed and cannot be delivered.
    Misprint {
        "Misprint", "Defectuosa",
        "A printed garment that can't be delivered. It isn't counted as a good piece: one more is printed, and a garment is needed to replace it.",
        "Prenda impresa que no se puede entregar. No cuenta como buena: se imprime una más y hace falta otra prenda para reponerla."
    }
    /// Common practice, no source.
    OffContact {
        "Off-contact", "Fuera de contacto",
        "The gap between screen and garment before you print. The mesh touches only under the squeegee and lifts off right behind it, which keeps edges sharp.",
        "La distancia entre pantalla y prenda antes de imprimir. La malla toca solo bajo el rasero y se separa justo detrás, y así los bordes quedan nítidos."
    }
    /// Source: ASTM E11.
    OpenArea {
        "Open area", "Área abierta",
        "The share of the mesh that is holes, in percent. The more open area, the more ink goes through.",
        "La parte de la malla que son huecos, en porcentaje. Cuanta más área abierta, más tinta pasa."
    }
    /// What the pace page says: `PaceView` in the core.
    Pace {
        "Pace, 80% likely", "Ritmo, 80\u{a0}% probable",
        "The pace is how many pieces you print per hour while the press runs, from this run and similar ones. The finish time is inside the 80% range 8 times in 10, stops and misprints included; the range narrows as you count.",
        "El ritmo son las piezas por hora con la prensa en marcha, según este tiraje y los parecidos. La hora de fin cae en el margen del 80\u{a0}% 8 de cada 10 veces, con paradas y defectuosas; el margen se estrecha conforme cuentas."
    }
    /// Common practice, no source.
    ReflectanceCurve {
        "Reflectance curve", "Curva de reflectancia",
        "How much light a color sends back at each wavelength, from violet to red. It says more than L*a*b*, and mixes calculated from it are more reliable.",
        "Cuánta luz devuelve un color en cada longitud de onda, del violeta al rojo. Dice más que L*a*b*, y las mezclas calculadas con ella son más confiables."
    }
    /// Source: AATCC TM8 and ISO 105-X12, by name.
    RubTest {
        "Rub test", "Prueba de frote",
        "Rub the print with a white cloth, dry or wet, and look at the color that comes off; also called crocking. AATCC 8 and ISO 105-X12 are standard methods for it.",
        "Frota el estampado con un paño blanco, seco o húmedo, y mira el color que suelta. AATCC 8 e ISO 105-X12 son métodos normalizados."
    }
    /// The unit that is planned and counted.
    Run {
        "Run", "Tiraje",
        "One print location on one group of garments, with its ink, screens and setup. Each run has its own count.",
        "Un lugar de impresión en un grupo de prendas, con su tinta, sus pantallas y sus ajustes. Cada tiraje tiene su conteo."
    }
    /// Common practice, no source.
    StretchTest {
        "Stretch test", "Prueba de estirado",
        "Stretch the print by hand and look for cracks. Cracks are a warning; a print without cracks is not proven cured.",
        "Estira el estampado con las manos y busca grietas. Las grietas avisan; que no haya no demuestra que esté curado."
    }
    /// Common practice, no source.
    StrikeOff {
        "Strike-off", "Prueba impresa",
        "A test print with the real ink and screen on the real garment, for approval before the run. Nothing else shows color, feel and coverage as they will be.",
        "Impresión de prueba con la tinta, la pantalla y la prenda reales, para aprobar antes del tiraje. Solo así se ven el color, el tacto y la cobertura reales."
    }
    /// A hit.
    Stroke {
        "Stroke", "Mano de tinta",
        "One pass of the squeegee that prints ink; flood strokes don't count. With two strokes on each garment, the garment is still counted once.",
        "Una pasada del rasero que imprime; la que solo carga la malla no cuenta. Con dos manos por prenda, la prenda se cuenta una sola vez."
    }
    /// Pieces that a failure may have spoiled.
    SuspectPieces {
        "Suspect pieces", "Piezas dudosas",
        "Pieces already printed that may be bad, because a failure was seen only after them. They stay in the count until someone has checked them.",
        "Piezas ya impresas que pueden estar mal, porque el fallo se vio después. Siguen en el conteo hasta que alguien las revise."
    }
    /// Common practice, no source.
    Tare {
        "Tare", "Tara",
        "Setting the scale to zero with the empty container on it, so that it shows the ink alone. Or enter the weight of the empty container, and the app subtracts it.",
        "Poner la báscula a cero con el recipiente vacío encima, para que marque solo la tinta. O anota el peso del recipiente vacío, y la app lo resta."
    }
    /// The colour that an ink is matched to.
    TargetColor {
        "Target color", "Color objetivo",
        "The color that an ink has to match, best measured from a sample the client approved. Every batch of the recipe is compared with it.",
        "El color que la tinta debe igualar, medido de preferencia en una muestra aprobada por el cliente. Cada mezcla de la receta se compara con él."
    }
    /// Common practice, no source.
    Underbase {
        "Underbase", "Base blanca",
        "White or light ink printed first on a dark garment, so that the color on top looks as it should. It is flashed before the next ink.",
        "Tinta blanca o clara que se imprime primero en una prenda oscura, para que el color de encima se vea como debe. Se le da flash antes de la siguiente tinta."
    }
    /// A recipe's revision.
    Version {
        "Version", "Versión",
        "A recipe as it was saved at one time. The client approves one version; a change makes a new version and keeps the old one.",
        "Una receta tal como se guardó una vez. El cliente aprueba una versión; un cambio crea otra y conserva la anterior."
    }
    /// Common practice, no source.
    WashTest {
        "Wash test", "Prueba de lavado",
        "Wash one printed garment the way the client will, then compare it with an unwashed one. No calculation replaces it: only a wash test shows that the print is cured.",
        "Lava una prenda impresa como lo hará el cliente y compárala con una sin lavar. Ningún cálculo la reemplaza: solo el lavado muestra que el estampado está curado."
    }
}

impl Term {
    /// All terms, in the alphabetical order of the language.
    pub fn all() -> Vec<Self> {
        let mut terms = Self::ALL.to_vec();
        sort_by_key(&mut terms, |term| alphabetical(term.name()));
        terms
    }

    /// Its number in the address of the glossary.
    pub fn number(self) -> u8 {
        self as u8
    }

    /// What it means, as a question: the name of its "?" button.
    pub fn question(self) -> String {
        help_question(self.name())
    }
}

/// A name as it is sorted: without capitals and accents.
fn alphabetical(name: &str) -> String {
    let plain = |letter| match letter {
        'á' | 'Á' => 'a',
        'é' | 'É' => 'e',
        'í' | 'Í' => 'i',
        'ó' | 'Ó' => 'o',
        'ú' | 'Ú' => 'u',
        other => other.to_ascii_lowercase(),
    };
    name.chars().map(plain).collect()
}

messages! {
    help_question(term) { "What does “{term}” mean?", "¿Qué significa «{term}»?" }
    // As the badges of the day's runs have them.
    help_forecast { "Makes it, tight, late", "Llega, justo, tarde" }
    help_drawing(term) { "Drawing: {term}", "Dibujo: {term}" }
    help_all_terms { "All terms", "Todos los términos" }
    glossary_title { "Glossary", "Glosario" }
    glossary_text { "What the words and numbers mean", "Qué significan las palabras y los números" }
    drawing_bar { "bar", "barra" }
    drawing_belt { "belt", "banda" }
    drawing_blue { "blue −b*", "azul −b*" }
    drawing_card { "card", "cartulina" }
    drawing_color { "color", "color" }
    drawing_dryer { "dryer", "horno" }
    drawing_film { "film", "película" }
    drawing_gap { "gap", "distancia" }
    drawing_garment { "garment", "prenda" }
    drawing_green { "green −a*", "verde −a*" }
    drawing_heat { "heat", "calor" }
    drawing_heated_length { "heated length", "largo con calor" }
    drawing_ink { "ink", "tinta" }
    drawing_last_solid { "last solid step", "último paso sólido" }
    drawing_light { "light sent back", "luz que devuelve" }
    drawing_opening { "opening", "luz de malla" }
    drawing_over_black { "over black", "sobre negro" }
    drawing_over_white { "over white", "sobre blanco" }
    drawing_polyester { "polyester with its dye", "poliéster con su tinte" }
    drawing_red { "red", "rojo" }
    drawing_red_axis { "red +a*", "rojo +a*" }
    drawing_screen { "screen", "pantalla" }
    drawing_squeegee { "squeegee", "rasero" }
    drawing_thread { "thread", "hilo" }
    drawing_underbase { "underbase", "base blanca" }
    drawing_violet { "violet", "violeta" }
    drawing_washed_out { "screen after washout", "pantalla revelada" }
    drawing_yellow { "yellow +b*", "amarillo +b*" }
}
