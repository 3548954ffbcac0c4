using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Divides the rows of a file into runs of samples.</summary>
internal interface IRunDivision
{
    /// <summary>Why the file is held.</summary>
    Problem? Problem { get; }

    /// <summary>Rows that belong to no run; complete after <see cref="End"/>.</summary>
    long Unused { get; }

    /// <summary>Whether recordings share the lines of the file, since they stand side by side.</summary>
    bool IsShared { get; }

    /// <summary>Takes neighbouring rows of a block, at most <see cref="SampleRows.Most"/>; gives the runs that are complete by them, each once it is. Stops at a problem.</summary>
    /// <param name="block">The rows.</param>
    /// <param name="from">The first of them.</param>
    /// <param name="upTo">The one behind the last.</param>
    IEnumerable<SampleRun> Take(RawBlock block, int from, int upTo);

    /// <summary>The runs that are complete by the end of the file.</summary>
    IEnumerable<SampleRun> End();
}
