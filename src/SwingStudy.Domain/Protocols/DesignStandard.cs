using System.Text.Json;

namespace SwingStudy.Domain.Protocols;

/// <summary>One published edition of design standards: its thresholds are data with the name of the edition, for they change.</summary>
/// <remarks>The editions stand in <c>protocols/standards/single-case.json</c>, each threshold with its basis.</remarks>
public sealed record DesignStandard
{
    /// <summary>Kebab-case name of the edition, as protocols write it.</summary>
    public required string Name { get; init; }

    /// <summary>Title of the publication.</summary>
    public required string Title { get; init; }

    /// <summary>Year of the publication.</summary>
    public required int Year { get; init; }

    /// <summary>Demonstrations of an effect at different times that are asked for.</summary>
    public required int Demonstrations { get; init; }

    /// <summary>Thresholds of each design that it covers.</summary>
    public required IReadOnlyList<DesignThreshold> Designs { get; init; }

    /// <summary>What it also asks for and no table of a study can show.</summary>
    public required IReadOnlyList<string> NotJudged { get; init; }

    /// <summary>All editions, oldest first.</summary>
    public static IReadOnlyList<DesignStandard> All { get; } = Load();

    /// <summary>The edition that holds where a protocol names none: the newest.</summary>
    public static DesignStandard Default => All[^1];

    /// <summary>The edition of that name, or null.</summary>
    public static DesignStandard? Find(string name) => All.FirstOrDefault(standard => standard.Name == name);

    /// <summary>The thresholds of a design; null where the edition does not cover it.</summary>
    public DesignThreshold? Of(DesignKind design) => Designs.FirstOrDefault(threshold => threshold.Design == Identifiers.Word.Of(design));

    // Every command reads it, so it is read by hand: building a serializer takes longer than all of the rest of the declarations.
    private static List<DesignStandard> Load()
    {
        using var stream = typeof(DesignStandard).Assembly.GetManifestResourceStream("single-case.json")
            ?? throw new InvalidOperationException("The design standards are missing from the program.");
        using var document = JsonDocument.Parse(stream);
        return [.. document.RootElement.GetProperty("editions").EnumerateArray().Select(Edition)];
    }

    private static DesignStandard Edition(JsonElement edition) => new()
    {
        Name = Text(edition, "name"),
        Title = Text(edition, "title"),
        Year = edition.GetProperty("year").GetInt32(),
        Demonstrations = edition.GetProperty("demonstrations").GetInt32(),
        Designs = [.. edition.GetProperty("designs").EnumerateArray().Select(Threshold)],
        NotJudged = [.. edition.GetProperty("not_judged").EnumerateArray().Select(text => text.GetString()!)],
    };

    private static DesignThreshold Threshold(JsonElement design) => new()
    {
        Design = Text(design, "design"),
        Phases = design.GetProperty("phases").GetInt32(),
        Meets = design.GetProperty("meets").GetInt32(),
        Reservations = design.GetProperty("reservations").GetInt32(),
        LongestRun = design.TryGetProperty("longest_run", out var run) ? run.GetInt32() : null,
        Basis = Text(design, "basis"),
    };

    private static string Text(JsonElement parent, string name) => parent.GetProperty(name).GetString()!;
}
