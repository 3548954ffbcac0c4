namespace SwingStudy.Domain.Units;

/// <summary>Names of units as headings of exports write them, and the UCUM codes they stand for.</summary>
/// <remarks>None of them is itself a UCUM code of the catalogue, so that a text never has two meanings.</remarks>
internal static class CustomaryNames
{
    /// <summary>Name, ignoring case, to UCUM code.</summary>
    public static IReadOnlyDictionary<string, string> Codes { get; } = Table(
        ("1", ["-", "–", "—", "ratio", "x"]),
        ("%", ["percent", "pct", "prozent", "procent", "pour cent"]),
        ("m", ["meter", "meters", "metre", "metres", "mtr"]),
        ("cm", ["centimeter", "centimeters", "centimetre", "centimetres"]),
        ("mm", ["millimeter", "millimeters", "millimetre", "millimetres"]),
        ("[in_i]", ["in", "in.", "inch", "inches", "\"", "″"]),
        ("[ft_i]", ["ft", "ft.", "foot", "feet"]),
        ("[yd_i]", ["yd", "yd.", "yds", "yds.", "yard", "yards"]),
        ("[mi_i]", ["mi", "mile", "miles"]),
        ("[mi_i]/h", ["mph", "mi/h", "miles/h", "mi/hr", "miles per hour"]),
        ("km/h", ["kph", "kmh", "km/hr", "kmph"]),
        ("m/s", ["mps", "m/sec", "meters/s", "metres/s"]),
        ("[ft_i]/s", ["ft/s", "fps", "ft/sec"]),
        ("[yd_i]/s", ["yd/s", "yds/s"]),
        ("[kn_i]", ["kn", "kt", "kts", "knot", "knots"]),
        ("deg", ["°", "º", "˚", "grad", "grader", "degré", "degrés", "gradi", "degree", "degrees", "degs", "grados", "graus"]),
        ("rad", ["radian", "radians"]),
        ("deg/s", ["°/s", "º/s", "dps", "deg/sec", "°/sec", "degrees/s", "degrees/sec"]),
        ("rad/s", ["rad/sec", "radians/s"]),
        ("{rev}/min", ["rpm", "rev/min", "revs/min", "r/min", "u/min", "tr/min", "tours/min", "umdr/min", "varv/min", "giri/min"]),
        ("{rev}/s", ["rps", "rev/s"]),
        ("s", ["sec", "secs", "sec.", "second", "seconds"]),
        ("ms", ["msec", "msecs", "millisecond", "milliseconds"]),
        ("us", ["µs", "usec", "microseconds"]),
        ("min", ["mins", "minute", "minutes"]),
        ("h", ["hr", "hrs", "hour", "hours"]),
        ("Hz", ["hertz", "1/sec"]),
        ("kg", ["kgs", "kilo", "kilos", "kilogram", "kilograms"]),
        ("g", ["gr", "gram", "grams", "gramme"]),
        ("[lb_av]", ["lb", "lb.", "lbs", "lbs.", "pound", "pounds"]),
        ("[oz_av]", ["oz", "ounce", "ounces"]),
        ("[gr]", ["grain", "grains"]),
        ("N", ["newton", "newtons"]),
        ("kN", ["kilonewton", "kilonewtons"]),
        ("[lbf_av]", ["lbf", "lb-f", "lb f", "pounds force", "pound-force"]),
        ("kgf", ["kp", "kg-f", "kilopond"]),
        ("N.m", ["Nm", "N-m", "newton metres", "newton meters"]),
        ("N.mm", ["nmm", "n-mm"]),
        ("N.s", ["Ns", "N-s", "newton seconds"]),
        ("[ft_i].[lbf_av]", ["ft-lb", "ft-lbs", "ft.lb", "ft lb", "ft-lbf", "lb-ft"]),
        ("{BW}", ["bw", "xbw", "x bw", "body weight", "body weights", "bodyweight", "bodyweights"]),
        ("%{BW}", ["%bw", "% bw", "percent body weight", "% body weight"]),
        ("{BW}/s", ["bw/s", "bw/sec"]),
        ("{BW}.s", ["bw.s", "bw s"]),
        ("Cel", ["°c", "ºc", "℃", "deg c", "degc", "celsius"]),
        ("[degF]", ["°f", "ºf", "℉", "deg f", "degf", "fahrenheit"]),
        ("K", ["kelvin"]),
        ("[in_i'Hg]", ["inhg", "in hg", "in.hg"]),
        ("mm[Hg]", ["mmhg", "mm hg", "torr"]),
        ("mbar", ["millibar", "mb"]),
        ("[g]", ["g-force", "gees"]),
        ("m/s2", ["m/sec2"]));

    private static Dictionary<string, string> Table(params (string Code, string[] Names)[] rows) => rows
        .SelectMany(row => row.Names.Select(name => (name, row.Code)))
        .ToDictionary(pair => pair.name, pair => pair.Code, StringComparer.OrdinalIgnoreCase);
}
