using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

public class AbcDocumentTests
{
    [Fact]
    public void The_documents_example_is_read_as_it_stands()
    {
        var example = RepositoryFiles.Text("docs", "files.md").Split("## Melody and chords: ABC")[1].Split("```\n")[1];
        var sheet = AbcText.Sheet(example);

        Assert.Equal("", AbcText.Messages(example));
        Assert.Equal("0 1 2 3 4 0(2) 1(2) 2(2) 3(2) 5", AbcText.Order(sheet));
        Assert.Equal("- 1 | G 3 | C 3 | D7 3 | G 2 | G 3", AbcText.Chords(sheet));
    }
}
