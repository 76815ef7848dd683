//! Messages: the first start and the demo shop.

use super::messages::messages;
messages! {
    welcome_title { "Every job out of the dryer before closing", "Todo fuera del horno antes del cierre" }
    welcome_text {
        "Count pulls on the phone at the press, see whether the run makes closing, and find every set-up again. It works without a network, and what you enter stays on this device.",
        "Cuenta las pasadas con el teléfono en la prensa, mira si la tirada llega al cierre y recupera cada ajuste. Funciona sin red y lo que escribes se queda en este dispositivo."
    }
    welcome_start { "Start my shop", "Empezar mi taller" }
    welcome_shop_name { "What is the shop called?", "¿Cómo se llama el taller?" }
    welcome_demo { "Look around a demo shop", "Ver un taller de muestra" }
    welcome_demo_hint { "An invented day, half done. Leaving it leaves nothing behind.", "Una jornada inventada, a medias. Al salir no queda nada." }
    welcome_file { "I have a backup file", "Tengo un archivo de copia" }
    welcome_other_copy(path) {
        "Another copy of Lastpull at {path} on this site has its own shop.",
        "Otra copia de Lastpull en {path}, en este mismo sitio, tiene su propio taller."
    }
    demo_device { "Press phone", "Teléfono de la prensa" }
    demo_card_title { "Demo shop", "Taller de muestra" }
    demo_open { "Open the demo shop", "Abrir el taller de muestra" }
    demo_left { "The demo shop is gone. Here is your own.", "El taller de muestra ya no está. Este es el tuyo." }
}
