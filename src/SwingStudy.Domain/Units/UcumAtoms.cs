namespace SwingStudy.Domain.Units;

/// <summary>The UCUM unit atoms that studies of movement need, and the prefixes of those that take one.</summary>
/// <remarks>
/// Values: The Unified Code for Units of Measure, version 2.2, tables 1 to 15, in the base units of <see cref="Unit"/>. Left out are atoms that
/// would make a customary name mean something else (with tonne <c>t</c>, <c>ft</c> would be a femtotonne).
/// </remarks>
internal static class UcumAtoms
{
    /// <summary>Factors of prefixes.</summary>
    public static IReadOnlyDictionary<string, double> Prefixes { get; } = new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["T"] = 1e12,
        ["G"] = 1e9,
        ["M"] = 1e6,
        ["k"] = 1e3,
        ["h"] = 1e2,
        ["da"] = 1e1,
        ["d"] = 1e-1,
        ["c"] = 1e-2,
        ["m"] = 1e-3,
        ["u"] = 1e-6,
        ["n"] = 1e-9,
    };

    /// <summary>Atoms that take a prefix.</summary>
    public static IReadOnlyDictionary<string, Unit> Metric { get; } = Table(
        new("m", new(1, 0, 0, 0, 0, 0, 0), 1),
        new("g", new(0, 1, 0, 0, 0, 0, 0), 1e-3),
        new("s", new(0, 0, 1, 0, 0, 0, 0), 1),
        new("rad", new(0, 0, 0, 1, 0, 0, 0), 180 / Math.PI),
        new("K", new(0, 0, 0, 0, 1, 0, 0), 1),
        new("Hz", new(0, 0, -1, 0, 0, 0, 0), 1),
        new("N", new(1, 1, -2, 0, 0, 0, 0), 1),
        new("Pa", new(-1, 1, -2, 0, 0, 0, 0), 1),
        new("J", new(2, 1, -2, 0, 0, 0, 0), 1),
        new("W", new(2, 1, -3, 0, 0, 0, 0), 1),
        new("A", new(0, 0, -1, 0, 0, 1, 0), 1),
        new("V", new(2, 1, -2, 0, 0, -1, 0), 1),
        new("l", new(3, 0, 0, 0, 0, 0, 0), 1e-3),
        new("L", new(3, 0, 0, 0, 0, 0, 0), 1e-3),
        new("bar", new(-1, 1, -2, 0, 0, 0, 0), 1e5),
        new("m[Hg]", new(-1, 1, -2, 0, 0, 0, 0), 133_322.0),
        new("[g]", new(1, 0, -2, 0, 0, 0, 0), 9.80665),
        new("gf", new(1, 1, -2, 0, 0, 0, 0), 9.80665e-3));

    /// <summary>Atoms that take no prefix.</summary>
    public static IReadOnlyDictionary<string, Unit> Plain { get; } = Table(
        new("%", default, 1e-2),
        new("[ppth]", default, 1e-3),
        new("[pi]", default, Math.PI),
        new("deg", new(0, 0, 0, 1, 0, 0, 0), 1),
        new("'", new(0, 0, 0, 1, 0, 0, 0), 1 / 60.0),
        new("''", new(0, 0, 0, 1, 0, 0, 0), 1 / 3600.0),
        new("gon", new(0, 0, 0, 1, 0, 0, 0), 0.9),
        new("circ", new(0, 0, 0, 1, 0, 0, 0), 360),
        new("min", new(0, 0, 1, 0, 0, 0, 0), 60),
        new("h", new(0, 0, 1, 0, 0, 0, 0), 3600),
        new("d", new(0, 0, 1, 0, 0, 0, 0), 86_400),
        new("wk", new(0, 0, 1, 0, 0, 0, 0), 604_800),
        new("a", new(0, 0, 1, 0, 0, 0, 0), 365.25 * 86_400),
        new("[in_i]", new(1, 0, 0, 0, 0, 0, 0), 0.0254),
        new("[ft_i]", new(1, 0, 0, 0, 0, 0, 0), 0.3048),
        new("[yd_i]", new(1, 0, 0, 0, 0, 0, 0), 0.9144),
        new("[mi_i]", new(1, 0, 0, 0, 0, 0, 0), 1609.344),
        new("[kn_i]", new(1, 0, -1, 0, 0, 0, 0), 1852 / 3600.0),
        new("[lb_av]", new(0, 1, 0, 0, 0, 0, 0), 0.453_592_37),
        new("[oz_av]", new(0, 1, 0, 0, 0, 0, 0), 0.028_349_523_125),
        new("[gr]", new(0, 1, 0, 0, 0, 0, 0), 64.798_91e-6),
        new("[lbf_av]", new(1, 1, -2, 0, 0, 0, 0), 4.448_221_615_260_5),
        new("[psi]", new(-1, 1, -2, 0, 0, 0, 0), 6894.757_293_168_361),
        new("[in_i'Hg]", new(-1, 1, -2, 0, 0, 0, 0), 133_322.0 * 0.0254),
        new("atm", new(-1, 1, -2, 0, 0, 0, 0), 101_325));

    /// <summary>Temperature scales with a zero of their own: they stand alone, never in a product.</summary>
    public static IReadOnlyDictionary<string, Unit> Scales { get; } = Table(
        new("Cel", new(0, 0, 0, 0, 1, 0, 0), 1, 273.15),
        new("[degF]", new(0, 0, 0, 0, 1, 0, 0), 5 / 9.0, 459.67 * 5 / 9));

    /// <summary>Annotations with a meaning. UCUM gives annotations none: a reader that ignores these sees a plain number, as the standard asks.</summary>
    public static IReadOnlyDictionary<string, Unit> Annotations { get; } = Table(
        new("{BW}", new(0, 0, 0, 0, 0, 0, 1), 1),
        new("{rev}", new(0, 0, 0, 1, 0, 0, 0), 360));

    private static Dictionary<string, Unit> Table(params Unit[] atoms) => atoms.ToDictionary(atom => atom.Code, StringComparer.Ordinal);
}
