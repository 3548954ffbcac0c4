using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>All problems of one declaration file, in the order of its lines.</summary>
/// <param name="file">The file as the person named it.</param>
internal sealed class ProblemList(string file)
{
    private readonly List<Problem> _problems = [];

    /// <summary>The file as the person named it.</summary>
    public string File { get; } = file;

    /// <summary>The problems so far, by line.</summary>
    public IReadOnlyList<Problem> InFileOrder => [.. _problems.OrderBy(problem => problem.Place.Row ?? 0)];

    /// <summary>Whether there is any.</summary>
    public bool Any => _problems.Count > 0;

    /// <summary>A place in the file.</summary>
    public Place At(int line) => new(File, line);

    /// <summary>Notes a problem.</summary>
    public void Add(Problem problem) => _problems.Add(problem);
}
