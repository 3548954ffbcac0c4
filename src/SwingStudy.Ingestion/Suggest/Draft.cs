using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>A mapping in the making: what is found so far and how sure it is.</summary>
internal sealed class Draft
{
    private readonly SourceMapping _start;

    public Draft(SourceMapping start) => (_start, Mapping) = (start, start);

    /// <summary>The mapping so far.</summary>
    public SourceMapping Mapping { get; set; }

    /// <summary>Lines in the order in which they were found.</summary>
    public List<SuggestedLine> Lines { get; } = [];

    /// <summary>Forgets all that was found.</summary>
    public void StartAgain()
    {
        Mapping = _start;
        Lines.Clear();
    }

    /// <summary>Says how sure a line is.</summary>
    public void Say(string key, string text, double confidence, string reason) => Lines.Add(new(key, text, confidence, reason));
}
