package threads
import ("testing";"fmt";"os";"strings")
func TestDbg(t *testing.T){
 for _,s:=range strings.Split(os.Getenv("LINES"),"\n"){ if s==""{continue}
  l:=newLine(s,false)
  fmt.Println("==",s); if os.Getenv("V")!=""{for _,it:=range l.items{ fmt.Printf("  %q",l.norm[it.from:it.to]); if it.mark!=0{fmt.Printf("<%c>",it.mark)}; for _,m:=range it.word{fmt.Printf("{%d %s}",m.class,m.value)}; if it.figure!=nil{fmt.Printf("#%d:%v",it.figure.kind,it.figure.v)}; if it.unread{fmt.Print("?")}};fmt.Println()}
  r:=Read(s);  fmt.Printf("  kind=%s mat=%s bar=%v unread=%q\n",r.Kind,r.Material,r.RatedBar,r.Unread)
  for _,e:=range r.Ends{ fmt.Println("   ",e.Words,"->",endsText([]EndReading{e}),"?",e.Question)}
 }
}
func TestDbgEnd(t *testing.T){
 for _,s:=range strings.Split(os.Getenv("LINES"),"\n"){ if s==""{continue}
  e,err:=ReadEnd(s); fmt.Println(s,"->",endsText([]EndReading{e}),"?",e.Question,err)
 }
}
