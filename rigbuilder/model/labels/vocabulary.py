"""The words on labels, as regular expressions in lower case: one for each idea, whatever the language.

English first, then German, French, Finnish, Spanish, Italian, Dutch and Swedish as tackle is sold there.
"""

LENGTH = (
    r"(?:length|len\.?|rod length|total length|l[äa]nge|laenge|rutenl[äa]nge|longueur|long\.|pituus|largo"
    r"|longitud|lunghezza|lengte|l[äa]ngd)"
)
WEIGHT = r"(?:weight|weighs|wt\.?|gewicht|gew\.|poids|paino|peso|vikt)"
DEPTH = (
    r"(?:(?:max(?:imum)?\.?\s*)?(?:diving|dive|dives|running|runs?|depths?|swims?|swimming|working)"
    r"(?:[\s-]*(?:depth|range))?|tauchtiefe|lauftiefe|tiefe|profondeur(?:\s*de\s*nage)?|uintisyvyys|syvyys"
    r"|profundidad|profondit[àa]|duikdiepte|diepte|djup(?:g[åa]ende)?)"
)
LINE = (
    r"(?:(?:main\s*)?lines?|schnur(?!fassung|kapazit|einzug)\w*+|tragkraft|lignes?|fil|siima(?!kap)\w*+"
    r"|l[ií]nea|sedal|lijn\w*+|linklass|lina)"
)
LURE = r"(?:lures?|baits?|k[öo]der\w*+|leurres?|viehe\w*+|se[ñn]uelos?|artificial[ei]|kunstaas|beten?)"
CAST_WEIGHT = (
    r"(?:c\.?\s?w\.?|w\.?\s?g\.?|(?:casting|cast)[ -]*(?:weight|wt\.?|power|range)|wurfgew(?:icht|\.)"
    r"|wurf-?gewicht|grammage|poids\s*de\s*lancer|puissance(?=\s*(?:de\s*lancer)?\s*[:=]?\s*\d)"
    r"(?:\s*de\s*lancer)?|heittopaino|peso\s*de\s*lance|potenza(?=\s*[:=]?\s*\d)|werpgewicht|kastvikt"
    r"|w(?=\s*[:=]))"
)
POWER = r"(?:power|puissance|potencia|potenza|rutenkraft|voimakkuus)"
ACTION = r"(?:action|taper|aktion|rutenaktion|acci[óo]n|azione|toiminta|actie)"
UP_TO = r"(?:up\s?to|max\.?|maximum|bis(?:\s*zu)?|jusqu'?\s?[àa]|hasta|fino\s*a|maks\.?|m[áa]x\.?)"
PIECES = (
    r"(?:pieces?|pcs?|pce|pec|sections?|secs?|sec|parts?|teilig\w*+|teile?|brins?|[ée]l[ée]ments?|osainen|osaa"
    r"|tramos?|sezioni|pezzi|delig|delad|delar|delen)"
)
NOISE = (
    r"(?:and|for|the|of|with|in(?=\s*:)|und|mit|f[üu]r|von|de|du|des|la|le|les|et|avec|pour|con|ja|met|och"
    r"|approx\.?|about|ca\.?|circa|env\.?)"
)

HEAVY = r"(?:heavy|heavey|hevy|heavvy|hvy|hv|schwer|lourde?|pesad[ao]|pesante|raskas|zwaar|tung)\.?"
LIGHT = r"(?:light|lite|lt|ligth|leicht|l[ée]g[eè]re?|liger[ao]|legger[ao]|kevyt|l[äa]tt)\.?"
MEDIUM = r"(?:medium|meduim|mediun|medum|meidum|med|mittel|moyen(?:ne)?|medi[ao])\.?"
MODERATE = r"(?:moderately|moderate|moderat[ao]?|mod[ée]r[ée]e?|moderado|mod|regular|reg)\.?"
FAST = r"(?:fast|fst|schnell|rapide|r[áa]pid[ao]|nopea|snabb|snel|veloce)\.?"
SLOW = r"(?:slow|langsam|lente?|lent[ao]|hidas|l[åa]ngsam|traag)"
EXTRA = r"(?:extra|xtra|ex|x|sehr|tr[eè]s|muy|erittäin|eritt[äa]in)\.?[ -]*"
# Behind such words light is a colour or a habit of speech, heavy a cover, slow a way of fishing.
NO_GRADE_AFTER = (
    r"(?![ -]+(?:duty|weight|greens?|blue|gr[ae]y|brown|red|yellow|wood|cork|cover|weeds?|grass|vegetation"
    r"|wire|tackle|pitch|jigging|trolling|retrieve|water|current|fish|sinking|floating|enough)(?![a-z]))"
)
NO_GRADE_BEFORE = r"(?<!too )(?<!not )(?<!so )(?<!how )(?<!the )(?<!very )"

RATIO = (
    r"(?:(?:gear[\s-]*)?ratio|gears?|gearing|g\.?r\.?|[üu]bersetzung(?:sverh[äa]ltnis)?|uebersetzung"
    r"|rapport|v[äa]litys(?:suhde)?|relaci[óo]n|rapporto|overbrenging\w*+|utv[äa]xling)"
)
TURN = (
    r"(?:(?:one\s*|full\s*)?(?:handle|crank)?[\s-]*(?:turns?|cranks?|revolutions?|rev|rotation|handle|h)"
    r"|(?:kurbel)?-?(?:umdrehung(?:en)?|drehung|umdr|u)|tours?(?:\s*de\s*manivelle)?|vuelta|giro|kierros|slag"
    r"|omwenteling|varv)(?![^\W\d_])\.?"
)
PER = rf"\s*(?:/|per|a|each|pro|par|por|al)\s*\.?\s*{TURN}"
RETRIEVE = (
    r"(?:(?:line\s*)?(?:retrieves?|retrieval|recovery|ipt|take[\s-]?up|pick[\s-]?up|pulls?)(?![a-z])"
    r"(?:\s*(?:rate|length|speed))?|schnureinzug|einzug|schnureinholung"
    r"|r[ée]cup(?:[ée]ration)?\.?(?![^\W\d_])|recuperaci[óo]n|recogida|recupero|kelausnopeus|inhaal\w*+"
    r"|intag(?:ning)?)"
)
DRAG = (
    r"(?:drag|md|brems(?:e|kraft|leistung)?|schnurbremse|frein(?:age)?|jarru(?:voima|teho)?|freno|slip(?:kracht)?"
    r"|broms(?:kraft)?)(?![^\W\d_])"
)
REEL_SIZE = r"(?:sizes?|series|gr[öo](?:ß|ss)e|groesse|gr\.|taille|koko|tama[ñn]o|talla|misura|storlek|maat)"
CAPACITY = (
    r"(?:(?:line|spool)\s*)?(?:cap(?:acity|acities)?\.?(?![a-z])|schnurfassung|(?:schnur)?kapazit[äa]t"
    r"|fassungsverm[öo]gen|fassung|contenance|capacit[ée]|siimakapasiteetti|kapasiteetti|capacidad"
    r"|capacit[àa]|lijncapaciteit|linkapacitet)"
)
NYLON = r"(?:nylon|nailon|mono(?:filament(?:o|e|s)?|fil[eao]?s?|siima)?|polyamide?|ナイロン)"
FLUOROCARBON = (
    r"(?:フロロ(?:カーボン)?|fluoro[\s-]?[ck]arbon(?:e|o|io)?|flurocarbon|flourocarbon|florocarbon|fluorcarbon"
    r"|fluoro|flouro|fluor|pvdf|fc|f\.\s?c\.?)"
)
BRAID = (
    r"(?:braid(?:ed)?|brade|geflochtene?r?s?|geflecht|tress[ée]e?s?|tresse|trenzad[oa]|trecciat[oa]|treccia"
    r"|kuitusiima|kuitu|gevlochten|fl[äa]tlina)"
)
LINE_WORD = r"(?:lines?|schnur|fil|ligne|siima|sedal|l[ií]nea|lijn|lina)"

HOOKS = (
    r"(?:trebles?|hooks?|singles?|doubles?|wide[\s-]*gap|ewg|offset|(?:treble|worm|jig|double|single)\s*hooks?"
    r"|drillinge?|haken|hame[çc]ons?|triples?|koukku)"
)
