namespace SwingStudy.Domain.Units;

/// <summary>Signs under which people know units whose UCUM code is made for machines.</summary>
internal static class UnitSymbols
{
    private static readonly Dictionary<string, string> Symbols = new(StringComparer.Ordinal)
    {
        ["1"] = "",
        ["deg"] = "°",
        ["deg/s"] = "°/s",
        ["Cel"] = "°C",
        ["[degF]"] = "°F",
        ["[mi_i]/h"] = "mph",
        ["[yd_i]"] = "yd",
        ["[ft_i]"] = "ft",
        ["[in_i]"] = "in",
        ["[mi_i]"] = "mi",
        ["[ft_i]/s"] = "ft/s",
        ["[kn_i]"] = "kn",
        ["[lb_av]"] = "lb",
        ["[oz_av]"] = "oz",
        ["[lbf_av]"] = "lbf",
        ["{rev}/min"] = "rpm",
        ["{BW}"] = "BW",
        ["{BW}/s"] = "BW/s",
        ["{BW}.s"] = "BW·s",
        ["%{BW}"] = "% BW",
        ["N.m"] = "N·m",
        ["N.mm"] = "N·mm",
        ["N.s"] = "N·s",
        ["[in_i'Hg]"] = "inHg",
        ["mm[Hg]"] = "mmHg",
        ["us"] = "µs",
        ["m/s2"] = "m/s²",
    };

    /// <summary>The sign of a code; a code without one is its own sign.</summary>
    public static string Of(string code) => Symbols.TryGetValue(code, out var symbol) ? symbol : code;
}
