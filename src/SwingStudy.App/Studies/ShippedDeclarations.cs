namespace SwingStudy.App.Studies;

/// <summary>The dictionary and the protocols that ship with the program.</summary>
internal static class ShippedDeclarations
{
    private static readonly string Share = Path.Combine(AppContext.BaseDirectory, "share");

    /// <summary>Folder of the shipped dictionary.</summary>
    public static string Dictionary { get; } = Path.Combine(Share, "data-dictionary");

    /// <summary>Names of the shipped protocols, without ending.</summary>
    public static IReadOnlyList<string> Protocols =>
        [.. Directory.GetFiles(Path.Combine(Share, "protocols"), "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    /// <summary>The file that <paramref name="named"/> means: a path, or the name of a shipped protocol; null when neither exists.</summary>
    public static string? FindProtocol(string named)
    {
        if (File.Exists(named))
            return Path.GetFullPath(named);
        var shipped = Path.Combine(Share, "protocols", named + ".yaml");
        return File.Exists(shipped) ? shipped : null;
    }
}
