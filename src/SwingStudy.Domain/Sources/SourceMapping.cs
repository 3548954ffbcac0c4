namespace SwingStudy.Domain.Sources;

/// <summary>How the exports of one device, in one layout, become rows of the study: all that is known of a source, with no code.</summary>
public sealed record SourceMapping
{
    /// <summary>Kebab-case name; also the folder under <c>inbox/</c> and the <c>source</c> column.</summary>
    public required string Source { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Title { get; init; }

    /// <summary>The very device, such as <c>bay1-strike</c>; rows of one device share one clock.</summary>
    public required string Device { get; init; }

    /// <summary>What one row describes.</summary>
    public required RowMeaning Rows { get; init; }

    /// <summary>Which reader opens the files.</summary>
    public required ReaderKind Reader { get; init; }

    /// <summary>
    /// Regular expression for the path of a file relative to <c>inbox/&lt;source&gt;/</c>, matched whole, with named groups; files that do not
    /// match are held. A group named <c>revision</c> marks corrected exports: they are taken after the others.
    /// </summary>
    public required string Files { get; init; }

    /// <summary>Text format of delimited text and JSON.</summary>
    public TextFormat Text { get; init; } = new();

    /// <summary>Where the rows lie.</summary>
    public Layout Layout { get; init; } = new();

    /// <summary>Set for exports with one row a reading.</summary>
    public LongForm? LongForm { get; init; }

    /// <summary>Cells with these texts (trimmed, ignoring case) hold nothing; the empty cell always does.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>Rows that are no data: averages, footers, reminders. Empty rows never are data.</summary>
    public IReadOnlyList<RowRule> NotData { get; init; } = [];

    /// <summary>Rows that are practice swings: kept, and never counted in an analysis.</summary>
    public IReadOnlyList<RowRule> Practice { get; init; } = [];

    /// <summary>What happens to a row with a bad cell.</summary>
    public BadCellPolicy BadCells { get; init; }

    /// <summary>Where the player's name or code stands; null when the export names nobody (then <see cref="Rows"/> cannot be sessions).</summary>
    public FieldSource? Participant { get; init; }

    /// <summary>When it happened.</summary>
    public required TimeRule Time { get; init; }

    /// <summary>The number a device gives its records; restarts are allowed, it is no identity.</summary>
    public FieldSource? Sequence { get; init; }

    /// <summary>The phase of a session; only with <see cref="RowMeaning.Sessions"/>.</summary>
    public FieldSource? Phase { get; init; }

    /// <summary>Dictionary variable and where its value comes from, in file order.</summary>
    public IReadOnlyDictionary<string, FieldSource> Values { get; init; } = new Dictionary<string, FieldSource>();

    /// <summary>Columns that are knowingly not taken. A column that is neither mapped nor ignored is reported.</summary>
    public IReadOnlyList<string> Ignore { get; init; } = [];

    /// <summary>Which moments belong to a swing; only with <see cref="RowMeaning.Moments"/>.</summary>
    public MomentWindow? Window { get; init; }

    /// <summary>How samples become curves; set exactly with <see cref="RowMeaning.Recordings"/>.</summary>
    public RecordingRule? Recording { get; init; }

    /// <summary>
    /// Force plates by the foot that stands on them (<c>lead</c>, <c>trail</c>, or <c>left</c>, <c>right</c>); empty when the source records none.
    /// Geometry that a file itself carries is stored with its captures and comes before what is declared here.
    /// </summary>
    public IReadOnlyDictionary<string, PlateGeometry> Plates { get; init; } = new Dictionary<string, PlateGeometry>();

    /// <summary>A table beside the files that tells more of each; null when there is none.</summary>
    public IndexTable? Index { get; init; }

    /// <summary>Consents that a player must have given before anything of this source is taken.</summary>
    public IReadOnlyList<People.ConsentScope> Consent { get; init; } = [People.ConsentScope.Research];

    /// <summary>Path of the declaration, for messages.</summary>
    public required string File { get; init; }

    /// <summary>Hash of the declaration.</summary>
    public required Identifiers.Sha256 Hash { get; init; }
}
