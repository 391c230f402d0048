// The table of measures and their names.
// Weights and fluid ounces as 16 CFR 500.19(a) has them, as in quantity.cpp. A spoon is 5 or 15 mL where it
// is defined (21 CFR 101.9), but what a kitchen calls a teaspoon held 2.42 to 7.71 mL when someone measured;
// that is the stated error, and table and dessert spoons are taken to spread alike, which is our estimate.
// Cups are good to the 10 % that USP <1221> allows a calibrated measure. A drop is 1/40 to 1/20 mL.
#include "measures.h"

namespace measures {
namespace {

using source::Standing;

constexpr std::int64_t kFirm = kUnit / 10000;  // figures with four places, as whole numbers

const std::vector<Measure> kAll = {
    {"percent", Kind::percent, 0, 0, 0, "", Standing::document},
    {"part", Kind::parts, 0, 0, 0, "", Standing::document},
    {"gram", Kind::mass, kUnit, kUnit, kUnit, "", Standing::document},
    {"kilogram", Kind::mass, 1000 * kUnit, 1000 * kUnit, 1000 * kUnit, "", Standing::document},
    {"milligram", Kind::mass, 10000, 10000, 10000, "", Standing::document},
    {"microgram", Kind::mass, 10, 10, 10, "", Standing::document},
    {"ounce", Kind::mass, 283495 * kFirm, 283495 * kFirm, 283495 * kFirm, "cfr_500_19", Standing::document},
    {"pound", Kind::mass, 4535920 * kFirm, 4535920 * kFirm, 4535920 * kFirm, "cfr_500_19",
     Standing::document},
    {"grain", Kind::mass, 648000, 648000, 648000, "herb_weights", Standing::document},
    // 1/16 ounce in the shop, 1/8 of the apothecaries' ounce in a pharmacy: the word alone does not say.
    {"drachm", Kind::mass, 17718000, 38879000, 38879000, "memory", Standing::memory},
    {"millilitre", Kind::volume, kUnit, kUnit, kUnit, "", Standing::document},
    {"microlitre", Kind::volume, 10000, 10000, 10000, "", Standing::document},
    {"centilitre", Kind::volume, 10 * kUnit, 10 * kUnit, 10 * kUnit, "", Standing::document},
    {"decilitre", Kind::volume, 100 * kUnit, 100 * kUnit, 100 * kUnit, "", Standing::document},
    {"litre", Kind::volume, 1000 * kUnit, 1000 * kUnit, 1000 * kUnit, "", Standing::document},
    {"fluid_ounce", Kind::volume, 295735 * kFirm, 295735 * kFirm, 295735 * kFirm, "cfr_500_19",
     Standing::document},
    {"teaspoon", Kind::volume, 24200 * kFirm, 50000 * kFirm, 77100 * kFirm, "spoons_1994",
     Standing::document},
    {"dessert_spoon", Kind::volume, 48400 * kFirm, 100000 * kFirm, 154200 * kFirm, "", Standing::estimate},
    {"tablespoon", Kind::volume, 72600 * kFirm, 150000 * kFirm, 231300 * kFirm, "", Standing::estimate},
    {"cup", Kind::volume, 2160000 * kFirm, 2400000 * kFirm, 2640000 * kFirm, "cfr_101_9", Standing::document},
    {"drop", Kind::volume, kUnit / 40, 333333, kUnit / 20, "ti_drops", Standing::document},
    {"pinch", Kind::vague, 0, 0, 0, "", Standing::document},
    {"piece", Kind::vague, 0, 0, 0, "", Standing::document},
    {"international_unit", Kind::vague, 0, 0, 0, "", Standing::document},
    {"part_by_volume", Kind::vague, 0, 0, 0, "", Standing::document},
};

struct Name {
    std::string_view text;  // in small letters
    std::string_view id;
};
constexpr Name kNames[] = {
    {"% w/w", "percent"},
    {"%w/w", "percent"},
    {"% (w/w)", "percent"},
    {"% by weight", "percent"},
    {"% m/m", "percent"},
    {"%", "percent"},
    {"percent", "percent"},
    {"per cent", "percent"},
    {"pct", "percent"},
    {"prozent", "percent"},
    {"wt%", "percent"},
    {"wt.%", "percent"},
    {"wt %", "percent"},
    {"wt. %", "percent"},
    {"% v/v", "part_by_volume"},
    {"% by volume", "part_by_volume"},
    {"parts by volume", "part_by_volume"},
    {"part by volume", "part_by_volume"},
    {"parts by weight", "part"},
    {"part by weight", "part"},
    {"pbw", "part"},
    {"part", "part"},
    {"parts", "part"},
    {"teil", "part"},
    {"teile", "part"},
    {"partie", "part"},
    {"parties", "part"},
    {"parte", "part"},
    {"partes", "part"},
    {"parti", "part"},
    {"delen", "part"},
    {"g", "gram"},
    {"gm", "gram"},
    {"gms", "gram"},
    {"gr", "gram"},
    {"grs", "gram"},
    {"gram", "gram"},
    {"grams", "gram"},
    {"gramm", "gram"},
    {"gramme", "gram"},
    {"grammes", "gram"},
    {"gramo", "gram"},
    {"gramos", "gram"},
    {"grammi", "gram"},
    {"kg", "kilogram"},
    {"kilo", "kilogram"},
    {"kilos", "kilogram"},
    {"mg", "milligram"},
    {"mcg", "microgram"},
    {"\xC2\xB5g", "microgram"},
    {"oz", "ounce"},
    {"ozs", "ounce"},
    {"ounce", "ounce"},
    {"ounces", "ounce"},
    {"oz wt", "ounce"},
    {"lb", "pound"},
    {"lbs", "pound"},
    {"pound", "pound"},
    {"pounds", "pound"},
    {"grain", "grain"},
    {"grains", "grain"},
    {"drachm", "drachm"},
    {"drachms", "drachm"},
    {"dram", "drachm"},
    {"drams", "drachm"},
    {"ml", "millilitre"},
    {"mls", "millilitre"},
    {"millilitre", "millilitre"},
    {"millilitres", "millilitre"},
    {"milliliter", "millilitre"},
    {"milliliters", "millilitre"},
    {"cc", "millilitre"},
    {"ccm", "millilitre"},
    {"\xC2\xB5l", "microlitre"},
    {"microlitre", "microlitre"},
    {"microlitres", "microlitre"},
    {"microliter", "microlitre"},
    {"microliters", "microlitre"},
    {"cl", "centilitre"},
    {"dl", "decilitre"},
    {"l", "litre"},
    {"litre", "litre"},
    {"litres", "litre"},
    {"liter", "litre"},
    {"liters", "litre"},
    {"fl oz", "fluid_ounce"},
    {"fl. oz", "fluid_ounce"},
    {"fl.oz", "fluid_ounce"},
    {"floz", "fluid_ounce"},
    {"fluid ounce", "fluid_ounce"},
    {"fluid ounces", "fluid_ounce"},
    {"tsp", "teaspoon"},
    {"tsps", "teaspoon"},
    {"teaspoon", "teaspoon"},
    {"teaspoons", "teaspoon"},
    {"teaspoonful", "teaspoon"},
    {"teaspoonfuls", "teaspoon"},
    {"tl", "teaspoon"},
    {"teel\xC3\xB6\x66\x66\x65l", "teaspoon"},
    {"c. \xC3\xA0 caf\xC3\xA9", "teaspoon"},
    {"c. \xC3\xA0 c", "teaspoon"},
    {"cuill\xC3\xA8re \xC3\xA0 caf\xC3\xA9", "teaspoon"},
    {"cuill\xC3\xA8res \xC3\xA0 caf\xC3\xA9", "teaspoon"},
    {"cucharadita", "teaspoon"},
    {"cucharaditas", "teaspoon"},
    {"cucchiaino", "teaspoon"},
    {"cucchiaini", "teaspoon"},
    {"theelepel", "teaspoon"},
    {"tesked", "teaspoon"},
    {"tsk", "teaspoon"},
    {"dsp", "dessert_spoon"},
    {"dessertspoon", "dessert_spoon"},
    {"dessertspoons", "dessert_spoon"},
    {"dessert spoon", "dessert_spoon"},
    {"dessert spoons", "dessert_spoon"},
    {"tbsp", "tablespoon"},
    {"tbsps", "tablespoon"},
    {"tbs", "tablespoon"},
    {"tblsp", "tablespoon"},
    {"tablespoon", "tablespoon"},
    {"tablespoons", "tablespoon"},
    {"tablespoonful", "tablespoon"},
    {"tablespoonfuls", "tablespoon"},
    {"el", "tablespoon"},
    {"essl\xC3\xB6\x66\x66\x65l", "tablespoon"},
    {"c. \xC3\xA0 soupe", "tablespoon"},
    {"c. \xC3\xA0 s", "tablespoon"},
    {"cuill\xC3\xA8re \xC3\xA0 soupe", "tablespoon"},
    {"cuill\xC3\xA8res \xC3\xA0 soupe", "tablespoon"},
    {"cucharada", "tablespoon"},
    {"cucharadas", "tablespoon"},
    {"cucchiaio", "tablespoon"},
    {"cucchiai", "tablespoon"},
    {"eetlepel", "tablespoon"},
    {"matsked", "tablespoon"},
    {"msk", "tablespoon"},
    {"cup", "cup"},
    {"cups", "cup"},
    {"cupful", "cup"},
    {"cupfuls", "cup"},
    {"drop", "drop"},
    {"drops", "drop"},
    {"gtt", "drop"},
    {"gtts", "drop"},
    {"tropfen", "drop"},
    {"tr", "drop"},
    {"goutte", "drop"},
    {"gouttes", "drop"},
    {"gota", "drop"},
    {"gotas", "drop"},
    {"goccia", "drop"},
    {"gocce", "drop"},
    {"druppel", "drop"},
    {"druppels", "drop"},
    {"droppar", "drop"},
    {"pinch", "pinch"},
    {"pinches", "pinch"},
    {"dash", "pinch"},
    {"splash", "pinch"},
    {"squirt", "pinch"},
    {"squirts", "pinch"},
    {"handful", "pinch"},
    {"handfuls", "pinch"},
    {"prise", "pinch"},
    {"pinc\xC3\xA9\x65", "pinch"},
    {"pincee", "pinch"},
    {"piece", "piece"},
    {"pieces", "piece"},
    {"capsule", "piece"},
    {"capsules", "piece"},
    {"cap", "piece"},
    {"caps", "piece"},
    {"stick", "piece"},
    {"sticks", "piece"},
    {"scoop", "piece"},
    {"scoops", "piece"},
    {"pump", "piece"},
    {"pumps", "piece"},
    {"pipette", "piece"},
    {"pipettes", "piece"},
    {"iu", "international_unit"},
    {"i.u", "international_unit"},
};

char lowered(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
bool in_word(char c) {
    const char low = lowered(c);
    return (low >= 'a' && low <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

bool begins(std::string_view text, std::string_view name) {
    if (text.size() < name.size()) return false;
    for (std::size_t i = 0; i < name.size(); ++i)
        if (lowered(text[i]) != name[i]) return false;
    return !in_word(name.back()) || text.size() == name.size() || !in_word(text[name.size()]);
}

}  // namespace

const std::vector<Measure>& all() {
    return kAll;
}

const Measure* find(std::string_view id) {
    for (const Measure& measure : kAll)
        if (measure.id == id) return &measure;
    return nullptr;
}

Found at_start(std::string_view text) {
    Found found;
    std::string_view id;
    for (const Name& name : kNames)
        if (name.text.size() > found.bytes && begins(text, name.text)) {
            found.bytes = name.text.size();
            id = name.id;
        }
    const bool one_letter = !text.empty() && (text.size() == 1 || !in_word(text[1]));
    if (found.bytes == 0 && one_letter && (text[0] == 'T' || text[0] == 't')) {
        found.bytes = 1;
        id = text[0] == 'T' ? "tablespoon" : "teaspoon";
    }
    if (found.bytes == 0) return found;
    found.measure = find(id);
    if (found.bytes < text.size() && text[found.bytes] == '.' && in_word(text[found.bytes - 1]))
        found.bytes += 1;  // "oz.", "tsp."
    return found;
}

Span times(Span count, const Measure& measure) {
    return {decimal::scale_nearest(count.low, measure.low, kUnit),
            decimal::scale_nearest(count.usual, measure.usual, kUnit),
            decimal::scale_nearest(count.high, measure.high, kUnit)};
}

Span grams_of(Span millilitres, quantity::Density density) {
    return {decimal::scale_nearest(millilitres.low, density.grid, decimal::kOne),
            decimal::scale_nearest(millilitres.usual, density.grid, decimal::kOne),
            decimal::scale_nearest(millilitres.high, density.grid, decimal::kOne)};
}

}  // namespace measures
