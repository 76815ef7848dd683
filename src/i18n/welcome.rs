//! Messages: the first start and the demo shop.

use super::messages::messages;
messages! {
    welcome_title { "Every job out of the dryer before closing", "Todo fuera del horno antes del cierre" }
    welcome_text {
        "For hand printing with water-based ink: count prints on a phone at the press, see if the run will be done by closing, and find every setup again. Works offline; what you enter stays on this device.",
        "Para imprimir a mano con tinta a base de agua: cuenta las prendas con el teléfono en la prensa, mira si el tiraje llega al cierre y recupera cada ajuste. Funciona sin red; lo que escribes se queda en este dispositivo."
    }
    data_lost_title { "The data of this shop is gone", "Los datos de este taller ya no están" }
    data_lost_text {
        "The browser has removed it, as it does when its storage is damaged or cleared. Your backup files and your other devices still have theirs. Import the latest backup first, then go on.",
        "El navegador los borró, como hace cuando su almacenamiento está dañado o se vacía. Tus copias y tus otros dispositivos conservan los suyos. Importa primero la última copia y sigue después."
    }
    welcome_start { "Start my shop", "Empezar mi taller" }
    welcome_shop_name { "Shop name", "Nombre del taller" }
    welcome_demo { "Try a demo shop", "Ver un taller de muestra" }
    welcome_demo_hint { "A made-up day, half done. Nothing stays when you exit.", "Un día inventado, a medias. Al salir no queda nada." }
    welcome_file { "I have a backup file", "Tengo una copia" }
    welcome_other_copy(path) {
        "Another copy of Lastpull at {path} on this site has its own shop.",
        "Otra copia de Lastpull en {path}, en este mismo sitio, tiene su propio taller."
    }
    first_steps_title { "First steps", "Primeros pasos" }
    first_steps_job { "Job", "Pedido" }
    first_steps_job_text { "What one client ordered, and for when.", "Lo que encargó un cliente y para cuándo." }
    first_steps_run { "Garments and run", "Prendas y tiraje" }
    first_steps_run_text { "First the garments by size, then the run: what you print on them, and where.", "Primero las prendas por talla, después el tiraje: qué imprimes en ellas y dónde." }
    first_steps_run_open { "Open job", "Abrir el pedido" }
    first_steps_count { "Count", "Conteo" }
    first_steps_count_text { "At the press: check the setup, then tap once per piece.", "En la prensa: revisa los ajustes y después toca una vez por pieza." }
    first_steps_count_open { "Open run", "Abrir el tiraje" }
    first_steps_backup { "Everything is on this device only. Make a backup file now and then.", "Todo está solo en este dispositivo. Haz una copia de vez en cuando." }
    first_steps_skip { "Skip these steps", "Omitir estos pasos" }
    demo_device { "Press phone", "Teléfono de la prensa" }
    demo_card_title { "Demo shop", "Taller de muestra" }
    demo_open { "Open the demo shop", "Abrir el taller de muestra" }
    demo_left { "Demo closed. This is your own shop.", "Cerraste la muestra. Este es tu taller." }
}
