"""The phrases in Spanish."""

from typing import Final

from howto.languages.time_words import MONTHS

_NUMBERS: Final = {
    "one": "una", "two": "dos", "three": "tres", "four": "cuatro", "five": "cinco", "six": "seis",
}  # fmt: skip
_NAMES: Final = (
    "enero", "febrero", "marzo", "abril", "mayo", "junio",
    "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre",
)  # fmt: skip
_MONTHS: Final = dict(zip(MONTHS, _NAMES, strict=True))
_FULL: Final = {"a quarter": "un cuarto", "half": "la mitad", "three quarters": "tres cuartos"}
_SHAPES: Final = {
    "ball": "una bola", "dome": "una cúpula", "cone": "un cono", "cube": "un cubo", "cylinder": "un cilindro",
}  # fmt: skip
_LINES: Final = {
    "widest ring": "el anillo más ancho", "line at the foot": "la línea del pie", "finished line": "la línea final",
}  # fmt: skip

SPANISH: Final[dict[str, str]] = {
    # trades
    "clipping": "recorte", "hedging": "setos", "espalier": "espaldera", "mowing": "siega", "feeding": "abonado",
    "watering": "riego", "soil": "suelo", "planting": "plantación", "safety": "seguridad",
    # the tags of a caption
    "topiary": "topiaria",
    "fruit": "frutales",
    "fertiliser": "abono",
    "hedge": "seto",
    "lawn": "césped",
    "newplants": "plantas nuevas",
    "ppe": "EPI",
    "compost": "compost",
    "mulch": "acolchado",
    "gardenwater": "agua de riego",
    # what a client reads
    "clip before it stands": "recortar antes de que mida",
    "next clip due": "próximo recorte",
    "look at the ties again": "volver a revisar las ataduras",
    "years until the frame is full": "años hasta completar la estructura",
    "top tier laid level": "último piso en horizontal",
    "first spring in which blossom stays": "primera primavera en que se deja la flor",
    "summer pruning begins": "empieza la poda de verano",
    "what grows again comes off": "se corta lo que rebrota",
    "feeding dates": "fechas de abonado",
    "next feed": "próximo abonado",
    "no nitrogen after": "nada de nitrógeno después del",
    "seasons to the finished height": "temporadas hasta la altura final",
    "at its finished height by": "en su altura final para el",
    "seasons to close the gaps": "temporadas hasta cerrar los huecos",
    "next cut due": "próximo corte",
    "mow when it reaches": "segar cuando mida",
    "cuts to come down": "cortes para bajar la altura",
    "days between cuts": "días entre cortes",
    "set height for now": "altura de corte por ahora",
    "first cut of new turf": "primer corte del césped nuevo",
    "stakes off by": "quitar los tutores antes del",
    "order": "pedir",
    "bags": "sacos",
    "each plant, each time": "cada planta, cada vez",
    "in a week without rain": "en una semana sin lluvia",
    "watering, as it stands": "riego, por ahora",
    "rooted, and left to the weather": "enraizado, ya sin riego",
    "nobody goes in for (united states)": "nadie entra durante (Estados Unidos)",
    "entry from": "se puede entrar desde",
    "spread it, before it sinks": "extender, antes de que asiente",
    "keep clear of every stem": "separar de cada tallo",
    "days between waterings": "días entre riegos",
    "put on each time": "agua cada vez",
    "water a week without rain": "agua en una semana sin lluvia",
    "in watering cans": "en regaderas",
    "run time each watering": "tiempo de cada riego",
    "watering in the first year": "riego del primer año",
    "each plant, each watering": "cada planta, cada riego",
    "all new plants, each watering": "todas las plantas nuevas, cada riego",
    "rooted, and then watered by weather": "enraizado; desde entonces, según el tiempo",
    **{f"water a week in {month}": f"agua por semana en {told}" for month, told in _MONTHS.items()},
    **{
        f"water a week in {month}, if no rain falls": f"agua por semana en {told}, si no llueve"
        for month, told in _MONTHS.items()
    },
    "none, as the usual rain is enough": "nada: basta la lluvia habitual",
    "set the mower to": "ajustar el cortacésped a",
    "each watering": "cada riego",
    "{} deep in a tin set on the ground": "{} de hondo en una lata puesta en el suelo",
    # how much and how often
    "yes": "sí", "no": "no",
    "{} to {}": "{} a {}",
    "{} dose": "{} dosis", "{} doses": "{} dosis",
    "day": "día", "{} day": "{} día", "{} days": "{} días", "{} to {} days": "{} a {} días",
    "every day": "todos los días", "every {} days": "cada {} días", "every {} to {} days": "cada {} a {} días",
    "every day now": "ahora, todos los días", "every {} days now": "ahora, cada {} días",
    "every {} to {} days now": "ahora, cada {} a {} días",
    "once a week": "una vez por semana", "twice a week": "dos veces por semana",
    "{} times a week": "{} veces por semana",
    "{} the same day": "las {} del mismo día", "{} the next day": "las {} del día siguiente",
    "{} {} days later": "las {}, {} días después",
    **{f"{full} full": f"llena hasta {part}" for full, part in _FULL.items()},
    **{f"each {full} full": f"cada una llena hasta {part}" for full, part in _FULL.items()},
    **{f"{one} full {{}} cans": f"{number} regaderas llenas de {{}}" for one, number in _NUMBERS.items()},
    **{f"{one} {{}} cans": f"{number} regaderas de {{}}" for one, number in _NUMBERS.items()},
    "one full {} can": "una regadera llena de {}", "one {} can": "una regadera de {}",
    # clipping: its measures, and the words they may hold
    "shape": "forma", "finished width": "anchura final", "standing width": "anchura actual",
    "finished height": "altura final", "standing height": "altura actual", "passes": "pasadas",
    "growth": "crecimiento", "gauge every": "medir cada", "clipping rate": "rendimiento de recorte",
    "day temperature": "temperatura del día", "first frost": "primera helada",
    "ball": "bola", "dome": "cúpula", "cone": "cono", "cube": "cubo", "cylinder": "cilindro",
    # clipping: its figures
    "off each side": "quitar por lado", "off the top": "quitar por arriba", "leaf taken off": "hoja que se quita",
    "light passes, at least": "pasadas ligeras, como mínimo",
    "gauge rings: width at each height": "anillos de medida: anchura a cada altura",
    "every {} up the stick": "cada {} en la vara",
    "up from the foot": "desde el pie", "width": "anchura", "out from the stem": "desde el tallo",
    "surface to clip": "superficie que recortar", "time for one person": "tiempo para una persona",
    # clipping: its drawings
    "{} off each side": "{} por lado",
    **_LINES,
    **{f"from above: the {line} first": f"Desde arriba: primero, {told}" for line, told in _LINES.items()},
    **{
        f"the plant from straight above: the {line}, {{}} across, drawn heavy{rest}":
        f"La planta vista justo desde arriba: {told}, de {{}}, en trazo grueso{told_rest}"
        for line, told in _LINES.items()
        for rest, told_rest in (
            (" inside an outline {} across that is hatched where it comes off.",
             " dentro de un contorno de {}, rayado donde se quita."),
            ("; nothing stands outside it.", "; nada queda fuera."),
        )
    },
    **{
        f"section: {shape} {{}} wide when done": f"Sección: {told}, {{}} de ancho al terminar"
        for shape, told in _SHAPES.items()
    },
    **{
        f"a {shape} in section, {{}} wide and {{}} high when done. it stands {{}} wide; {off}":
        f"{told.capitalize()} en sección, {{}} de ancho y {{}} de alto al terminar. Ahora mide {{}} de ancho; {gone}"
        for shape, told in _SHAPES.items()
        for off, gone in (
            ("the hatched shell, {} a side and {} % of the leaf, comes off.",
             "la capa rayada, {} por lado y {} % de la hoja, se quita."),
            ("the hatched shell, {} % of the leaf, comes off.", "la capa rayada, {} % de la hoja, se quita."),
            ("nothing comes off.", "no se quita nada."),
        )
    },
}  # fmt: skip
SPANISH_UNITS: Final[dict[str, str]] = {
    "bulb": "bulbo", "bulbs": "bulbos", "bush": "arbusto", "bushes": "arbustos", "cut": "corte", "cuts": "cortes",
    "cutting": "esqueje", "cuttings": "esquejes", "day": "día", "days": "días", "month": "mes", "months": "meses",
    "pass": "pasada", "passes": "pasadas", "people": "personas", "person": "persona", "piece": "pieza",
    "pieces": "piezas", "plant": "planta", "plants": "plantas", "pot": "maceta", "pots": "macetas", "row": "hilera",
    "rows": "hileras", "seed": "semilla", "seeds": "semillas", "shrub": "arbusto", "shrubs": "arbustos",
    "stake": "tutor", "stakes": "tutores", "tie": "atadura", "ties": "ataduras", "time": "vez", "times": "veces",
    "tree": "árbol", "trees": "árboles", "vine": "vid", "vines": "vides", "week": "semana", "weeks": "semanas",
    "year": "año", "years": "años",
}  # fmt: skip
